/** What a picture needs besides its SVG text to become a bitmap. */
export interface RasterOptions {
  /**
   * Paths of the font files that texts are set in: the four cuts of Liberation Sans. No font of the machine is used,
   * or the same picture would have other bytes on another machine. The library takes paths, not bytes.
   */
  readonly fontFiles: readonly string[]
  /** Bitmap pixels for each pixel of the picture. */
  readonly scale: number
}

const family = 'Liberation Sans'

/**
 * The picture as PNG, for programs that do not show SVG. The same picture and font files give the same bytes.
 *
 * @throws Error when the text is not SVG, or when the library has no build for this kind of machine.
 */
export async function rasteriseSvg(svg: string, {fontFiles, scale}: RasterOptions): Promise<Uint8Array> {
  // Loaded with the first picture: a native module, which most commands do without.
  const {renderAsync} = await import('@resvg/resvg-js')
  const image = await renderAsync(svg, {
    font: {
      loadSystemFonts: false,
      fontFiles: [...fontFiles],
      defaultFontFamily: family,
      sansSerifFamily: family,
      serifFamily: family,
      monospaceFamily: family
    },
    fitTo: {mode: 'zoom', value: scale},
    background: '#ffffff'
  })
  return Uint8Array.from(image.asPng())
}
