import type {Image, Link, RootContent} from 'mdast'
import {nearestName} from '../model/nearest-name.ts'
import {picturePaths} from './pictures-named.ts'
import type {StudyPictures} from './study-picture.ts'

/** A link that a page may hold: to the web, to a mail address, or within the report. Of any other only the words are left. */
export function keptLink(link: Link, problem: (message: string) => void): RootContent[] {
  const {type, url, title, children} = link
  if (isSafe(url, ['http', 'https', 'mailto'])) return [{type, url, title: title ?? null, children}]
  problem(`links to '${url}' are left out`)
  return children
}

/**
 * A picture of the study folder, by its address in the report; of any other only its words are left, for a page asks
 * nothing of another host. Where the pictures are not at hand, it is kept as it is written.
 */
export function keptPicture(
  {type, url, title, alt}: Image,
  file: string,
  pictures: StudyPictures | undefined,
  problem: PictureProblem
): RootContent[] {
  const words: RootContent[] = alt ? [{type: 'text', value: alt}] : []
  if (!isSafe(url, []) || url.startsWith('//')) {
    problem('pictures must lie in the study folder; only its words are kept', pictureRemedy)
    return words
  }
  if (!alt?.trim()) {
    problem(
      `the picture '${url}' has no words for those who cannot see it`,
      'say what it shows between the brackets: `![what it shows](photos/name.jpg)`'
    )
  }
  if (pictures === undefined) return [{type, url, title: title ?? null, alt: alt ?? ''}]
  const paths = picturePaths(url, file)
  const path = paths.find((one) => pictures.named.has(one))
  const picture = path === undefined ? undefined : pictures.named.get(path)
  if (picture === undefined) {
    const nearest = nearestName(paths[paths.length - 1] ?? url, pictures.files)
    problem(
      `there is no picture '${url}'`,
      nearest === undefined ? pictureRemedy : `did you mean \`${nearest}\`?`
    )
    return words
  }
  if ('unusable' in picture) {
    problem(
      `the picture '${path}' ${picture.unusable}`,
      'put a PNG, JPEG, GIF, WebP or plain SVG in its place'
    )
    return words
  }
  return [{type, url: encodeURI(picture.path), title: title ?? null, alt: alt ?? ''}]
}

/** Tells what is wrong with a picture, and what to do about it. */
type PictureProblem = (message: string, remedy: string) => void

const pictureRemedy = 'put the picture into photos/ and name it as `photos/name.jpg`'

function isSafe(url: string, protocols: readonly string[]): boolean {
  const [, protocol] = /^\s*([^/?#:]*):/.exec(url) ?? []
  return protocol === undefined || protocols.includes(protocol.toLowerCase())
}
