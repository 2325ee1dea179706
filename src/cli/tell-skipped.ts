import type {StudyFolder} from '../files/read-study-folder.ts'
import type {Channel} from './terminal/terminal.ts'
import {visible} from './terminal/visible.ts'

/** Say which links of a study folder were not followed: their files are missing from everything else that is said. */
export function tellSkipped(channel: Channel, {skipped}: StudyFolder): void {
  for (const {path, reason} of skipped)
    channel.write(`pitfolio: the link ${visible(path)} is not followed: ${reason}\n`)
}
