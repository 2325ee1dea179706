import {dropXmlControls} from '../svg/drop-xml-controls.ts'

/**
 * An address as a word-processor file may hold it, or nothing: one address that is not sound makes the whole file
 * unreadable for some word processors.
 */
export function docxLinkTarget(url: string): string | undefined {
  const target = dropXmlControls(url)
    .trim()
    .replace(/%(?![\da-f]{2})/gi, '%25')
    .replace(/[^!#-;=?-Z_a-z~]/g, encodeURIComponent)
  const [, protocol] = /^([^/?#]*):/.exec(target) ?? []
  if (protocol === undefined) return target === '' || target.startsWith('//') ? undefined : target
  if (!/^(https?:\/\/[^/?#]|mailto:[^?])/i.test(target)) return undefined
  return URL.canParse(target) ? target : undefined
}
