/** The package names a file of types that it does not hold; this one it does. */
declare module 'clipper2-wasm' {
  import type { Clipper2ZFactoryFunction } from 'clipper2-wasm/dist/clipper2z';

  const start: Clipper2ZFactoryFunction;
  export = start;
}
