import {renderSvg} from './svg/render-svg.ts'
import {answerPictures} from './workers/answer-pictures.ts'

/** The first picture of a process takes as long as the next ten: this one is for nobody. */
const firstPicture = {
  id: 'first',
  title: 'None',
  description: 'None.',
  spec: {
    data: {values: [{habitat: 'wood', rate: 1}]},
    mark: 'point',
    encoding: {x: {field: 'rate', type: 'quantitative'}, y: {field: 'habitat', type: 'nominal'}}
  }
}

/** What a thread runs that draws. Loading takes longer than most studies to read: it is done while they are. */
answerPictures(renderSvg)
await renderSvg(firstPicture)
