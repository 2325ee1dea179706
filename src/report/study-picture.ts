import {fileName} from '../model/file-name.ts'
import {withoutMetadata} from './without-metadata.ts'

/** The kinds of pictures that every browser shows. */
export type PictureType = 'image/png' | 'image/jpeg' | 'image/gif' | 'image/webp' | 'image/svg+xml'

/** A picture of the study folder that documents may show, or the reason why they may not: completes 'it ...'. */
export type StudyPicture =
  | {
      /** Where it stands in the report: `photos/trap.jpg`. */
      readonly path: string
      readonly type: PictureType
      /** Without what a camera writes beside the picture: the place where it was taken is not for everybody. */
      readonly bytes: Uint8Array
    }
  | {readonly unusable: string}

/** What can be shown of the pictures of a study. */
export interface StudyPictures {
  /** Pictures that a text or template names, by study-relative path. */
  readonly named: ReadonlyMap<string, StudyPicture>
  /** Every file that lies where pictures may lie, for the nearest name of one that is not there. */
  readonly files: readonly string[]
}

/** Every page holds its pictures, so that larger ones would make it unwieldy. */
export const largestPicture = {bytes: 5_000_000, words: '5 MB'}

/** Folders of a study in which pictures may lie. */
export function isPicturePlace(path: string): boolean {
  return /^(photos|text|templates)\//.test(path) && !/\.(md|css|html)$/.test(path)
}

/** Judges a picture by its first bytes, whatever its name says. */
export function studyPicture(path: string, bytes: Uint8Array): StudyPicture {
  const type = pictureType(bytes)
  if (type === undefined) return {unusable: 'is no PNG, JPEG, GIF, WebP or SVG by its first bytes'}
  if (type === 'image/svg+xml' && isActive(new TextDecoder().decode(bytes)))
    return {unusable: 'is an SVG with a script, or with parts from elsewhere, in it'}
  const parts = path.replace(/^photos\//, '').split('/')
  return {path: ['photos', ...parts.map(fileName)].join('/'), type, bytes: withoutMetadata(type, bytes)}
}

/** A picture as an address that holds it whole (RFC 2397). */
export function dataAddress(type: PictureType, bytes: Uint8Array): string {
  let letters = ''
  for (let start = 0; start < bytes.length; start += 0x8000)
    letters += String.fromCharCode(...bytes.subarray(start, start + 0x8000))
  return `data:${type};base64,${btoa(letters)}`
}

/**
 * Signatures: PNG (ISO/IEC 15948), JPEG (ISO/IEC 10918-1), GIF87a and GIF89a, WebP (RFC 9649); SVG begins with its
 * element, after a declaration, comments and a type at most.
 */
function pictureType(bytes: Uint8Array): PictureType | undefined {
  const start = String.fromCharCode(...bytes.subarray(0, 12))
  if (start.startsWith('\x89PNG\r\n\x1a\n')) return 'image/png'
  if (start.startsWith('\xff\xd8\xff')) return 'image/jpeg'
  if (/^GIF8[79]a/.test(start)) return 'image/gif'
  if (/^RIFF.{4}WEBP/s.test(start)) return 'image/webp'
  const text = new TextDecoder().decode(bytes.subarray(0, 2000))
  return /^\s*(?:<\?xml[^>]*>\s*)?(?:<!--.*?-->\s*)*(?:<!DOCTYPE svg[^>[]*>\s*)?(?:<!--.*?-->\s*)*<svg[\s>]/s.test(
    text
  )
    ? 'image/svg+xml'
    : undefined
}

/** Whether a drawing could do or ask for anything once somebody opens it by itself. */
function isActive(svg: string): boolean {
  return /<script|<foreignObject|<!ENTITY|\son\w+\s*=|javascript:|(?:href|src)\s*=\s*["']\s*(?!#|data:image\/)|url\(\s*["']?(?!#|["']?data:)/i.test(
    svg
  )
}
