import {rename} from 'node:fs/promises'
import {exists} from './work-folder.ts'

/** Put a new folder in the place of an old one; when that fails, the old one stands as before. */
export async function swapFolders(
  target: string,
  fresh: string,
  old: string,
  move: (from: string, to: string) => Promise<void> = rename
): Promise<void> {
  const hadOld = await exists(target)
  if (hadOld) await move(target, old)
  try {
    await move(fresh, target)
  } catch (error) {
    if (hadOld) await move(old, target)
    throw error
  }
}
