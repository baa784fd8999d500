/** The page's own scheme: from file:// a worker and modules would not load, and every file would be one origin. */
export const pageScheme = 'app';
export const pageOrigin = 'app://diewright';
export const pageAddress = `${pageOrigin}/index.html`;

/** Whether an address belongs to our page. `URL.origin` is "null" for schemes of one's own, so its parts are compared. */
export function isPageAddress(address: string): boolean {
  try {
    const { protocol, host } = new URL(address);
    return `${protocol}//${host}` === pageOrigin;
  } catch {
    return false;
  }
}
