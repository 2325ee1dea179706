import {parentPort} from 'node:worker_threads'
import type {DrawPicture, PictureRequest} from '../model/draw-picture.ts'

/** What a thread is asked that draws. */
export interface PictureQuestion {
  readonly id: number
  readonly request: PictureRequest
}

/** A picture, or why there is none. */
export interface PictureAnswer {
  readonly id: number
  readonly svg?: string
  readonly fault?: string
}

/** The far end of drawInThread. */
export function answerPictures(draw: DrawPicture): void {
  parentPort?.on('message', async ({id, request}: PictureQuestion) => {
    const answer = await draw(request).then(
      (svg): PictureAnswer => ({id, svg}),
      (error: unknown): PictureAnswer => ({id, fault: error instanceof Error ? error.message : String(error)})
    )
    parentPort?.postMessage(answer)
  })
}
