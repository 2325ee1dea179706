import {loadEngine} from './svg/engine.ts'
import {renderSvg} from './svg/render-svg.ts'
import {answerPictures} from './workers/answer-pictures.ts'

/** What a thread runs that draws. The libraries take longer to load than most studies to read: begin at once. */
answerPictures(renderSvg)
await loadEngine()
