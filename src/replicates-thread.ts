import {type ReplicateTask, replicateRanges} from './results/replicates.ts'
import {answerParts} from './workers/answer-parts.ts'

/** What a thread runs that shares in the bootstrap. */
answerParts((task) => replicateRanges(task as ReplicateTask))
