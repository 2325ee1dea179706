/** The part of cephes that is used. The package has these types, but its export map hides them from TypeScript. */
declare module 'cephes' {
  /** Resolves when the WebAssembly is compiled; no function may be called before. */
  export const compiled: Promise<void>
  export function ndtri(p: number): number
  export function stdtri(degreesOfFreedom: number, p: number): number
  export function stdtr(degreesOfFreedom: number, t: number): number
  export function igamc(shape: number, x: number): number
  export function incbet(a: number, b: number, x: number): number
  export function lgam(x: number): number
  export function psi(x: number): number
  export function zeta(s: number, q: number): number
  export function expn(order: number, x: number): number
}
