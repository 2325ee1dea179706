import type {Settings} from './settings.ts'

/** Seed of every random stream: that of study.yaml, else 1. */
export function seedOf({analysis}: Settings): number {
  return analysis?.seed ?? 1
}
