import {UntrustedZip} from './untrusted-zip.ts'

const longestName = 1024

/** The name of a zip member, if it stays inside the folder it is unpacked into on every system. */
export function refuseName(raw: Uint8Array): {readonly name: string; readonly isDirectory: boolean} {
  let name: string
  try {
    name = new TextDecoder('utf-8', {fatal: true, ignoreBOM: true}).decode(raw)
  } catch {
    throw new UntrustedZip('it holds a file whose name is not UTF-8')
  }
  const shown = JSON.stringify(name.slice(0, 100))
  if (name.length > longestName || /[\u0000-\u001f\u007f\\]/.test(name))
    throw new UntrustedZip(`it holds a file named ${shown}`)
  if (name.startsWith('/') || /^[A-Za-z]:/.test(name))
    throw new UntrustedZip(`${shown} would be written to a place of its own choosing`)
  const isDirectory = name.endsWith('/')
  const parts = (isDirectory ? name.slice(0, -1) : name).split('/')
  if (parts.some((part) => part === '..')) throw new UntrustedZip(`${shown} leads out of the archive`)
  if (parts.some((part) => part === '' || part === '.'))
    throw new UntrustedZip(`it holds a file named ${shown}`)
  return {name, isDirectory}
}
