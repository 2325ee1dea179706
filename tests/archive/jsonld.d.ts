declare module 'jsonld' {
  interface RemoteDocument {
    readonly contextUrl: null
    readonly documentUrl: string
    readonly document: unknown
  }
  const jsonld: {
    expand(
      document: object,
      options: {documentLoader: (url: string) => Promise<RemoteDocument>; base: string}
    ): Promise<readonly Readonly<Record<string, unknown>>[]>
  }
  export default jsonld
}
