import type {Loader} from 'vega'

/** A loader that reads nothing, and the list of what it was asked for. */
export interface ClosedLoader {
  readonly loader: Loader
  readonly refused: readonly string[]
}

/**
 * A chart brings its data along. The library's own loader would read any file or address that a specification
 * names, so that text from a study folder could pull other files of the machine into a report.
 */
export function closedLoader(): ClosedLoader {
  const refused: string[] = []
  const refuse = (uri: string): Promise<string> => {
    refused.push(uri)
    return Promise.reject(new Error('charts read no files and no addresses'))
  }
  const loader: Loader = {
    load: refuse,
    http: refuse,
    file: refuse,
    // It has to resolve: a rejection here is not caught by the library and would end the process.
    sanitize: () => Promise.resolve({href: '#'})
  }
  return {loader, refused}
}
