declare module 'subset-font' {
  function subsetFont(
    font: Uint8Array,
    text: string,
    options: { readonly targetFormat: 'truetype'; readonly noLayoutClosure: boolean },
  ): Promise<Uint8Array>;
  export = subsetFont;
}
