import {Worker} from 'node:worker_threads'
import type {ShareDrawing} from '../model/draw-picture.ts'
import type {PictureAnswer, PictureQuestion} from './answer-pictures.ts'

interface Waiting {
  readonly settle: (svg: string) => void
  readonly fail: (fault: Error) => void
  readonly drawInline: () => void
}

/**
 * Pictures drawn by a thread of their own, which loads what it needs at once, while this one reads and computes.
 * Pictures that it owes when it dies, or never starts, are drawn inline.
 *
 * @param entry the script of the thread, which calls answerPictures. JavaScript: a thread cannot load TypeScript.
 */
export function drawInThread(entry: URL): ShareDrawing {
  const waiting = new Map<number, Waiting>()
  let asked = 0
  let isGone = false
  const thread = new Worker(entry)
  const giveUp = (): void => {
    isGone = true
    for (const {drawInline} of waiting.values()) drawInline()
    waiting.clear()
  }
  thread.on('error', giveUp)
  thread.on('exit', giveUp)
  thread.on('message', ({id, svg, fault}: PictureAnswer) => {
    const question = waiting.get(id)
    waiting.delete(id)
    // The process may end when nobody waits for a picture any more, and not before.
    if (waiting.size === 0) thread.unref()
    if (svg === undefined) question?.fail(new Error(fault))
    else question?.settle(svg)
  })
  // Only now: to listen for messages keeps a process alive, one that has nothing to draw too.
  thread.unref()
  return (request, inline) => {
    if (isGone) return inline(request)
    return new Promise((settle, fail) => {
      const question: PictureQuestion = {id: ++asked, request}
      waiting.set(question.id, {settle, fail, drawInline: () => inline(request).then(settle, fail)})
      thread.ref()
      thread.postMessage(question)
    })
  }
}
