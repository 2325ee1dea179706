import {habitatStyles} from '../../src/model/habitat-style.ts'
import {inkTones} from '../../src/model/ink.ts'

type Spec = Readonly<Record<string, unknown>>

const habitats = ['Wet heath', 'Birch wood', 'Hay meadow', 'Field margin']
const styles = habitatStyles(habitats.length)
const colourScale = {domain: habitats, range: styles.map((style) => style.colour)}
const shapeScale = {domain: habitats, range: styles.map((style) => style.shape)}
const dashScale = {domain: habitats, range: styles.map((style) => style.dash)}

/** Effort: trap-nights kept and lost, stacked, one bar for each site. */
export const bars: Spec = {
  data: {
    values: ['Upper bog', 'Lower bog', 'Old birches', 'Mill meadow'].flatMap((site, index) => [
      {c0: site, c1: 'in use', c2: 420 - 37 * index},
      {c0: site, c1: 'lost', c2: 12 + 31 * index}
    ])
  },
  mark: 'bar',
  encoding: {
    y: {field: 'c0', type: 'nominal', sort: null, title: null},
    x: {field: 'c2', type: 'quantitative', title: 'Trap-nights'},
    color: {
      field: 'c1',
      type: 'nominal',
      title: null,
      scale: {domain: ['in use', 'lost'], range: [inkTones.muted.light, inkTones.rule.light]}
    }
  }
}

/** Activity-density with intervals, a habitat's sites as open symbols. */
export const pointsWithErrorBars: Spec = {
  data: {
    values: habitats.map((name, index) => ({
      c0: name,
      c1: 31.4 - 6.1 * index,
      c2: 24.2 - 6.1 * index,
      c3: 40.9 - 5.8 * index
    }))
  },
  height: {step: 34},
  encoding: {
    y: {field: 'c0', type: 'nominal', sort: null, title: null},
    color: {field: 'c0', type: 'nominal', scale: colourScale, legend: null}
  },
  layer: [
    {
      mark: {type: 'rule', strokeWidth: 1.5},
      encoding: {
        x: {field: 'c2', type: 'quantitative', title: 'Individuals per 100 trap-nights'},
        x2: {field: 'c3'}
      }
    },
    {
      mark: {type: 'point', size: 80},
      encoding: {
        x: {field: 'c1', type: 'quantitative'},
        shape: {field: 'c0', type: 'nominal', scale: shapeScale, legend: null}
      }
    }
  ]
}

/** Rarefaction curves: a line and a band for each habitat, named at its end. */
export const linesWithBands: Spec = {
  data: {
    values: habitats.flatMap((name, index) =>
      Array.from({length: 25}, (_, step) => {
        const individuals = 20 * (step + 1)
        const species = (34 - 5 * index) * (1 - Math.exp(-individuals / (90 + 40 * index)))
        const half = 0.6 + step * 0.11
        return {
          c0: name,
          c1: individuals,
          c2: species,
          c3: species - half,
          c4: species + half,
          c5: step === 24
        }
      })
    )
  },
  encoding: {
    x: {field: 'c1', type: 'quantitative', title: 'Individuals', scale: {nice: false, domainMin: 0}},
    color: {field: 'c0', type: 'nominal', scale: colourScale, legend: null}
  },
  layer: [
    {
      mark: 'area',
      encoding: {y: {field: 'c3', type: 'quantitative', title: 'Species'}, y2: {field: 'c4'}}
    },
    {
      mark: 'line',
      encoding: {
        y: {field: 'c2', type: 'quantitative'},
        strokeDash: {field: 'c0', type: 'nominal', scale: dashScale, legend: null}
      }
    },
    {
      transform: [{filter: 'datum.c5'}],
      mark: {type: 'text', align: 'left', dx: 6},
      encoding: {
        y: {field: 'c2', type: 'quantitative'},
        text: {field: 'c0'},
        color: {value: inkTones.ink.light}
      }
    }
  ]
}

/** Rank and abundance on a logarithmic axis, clipped to the plot. */
export const logAxis: Spec = {
  data: {
    values: habitats.flatMap((name, index) =>
      Array.from({length: 24 - 4 * index}, (_, rank) => ({
        c0: name,
        c1: rank + 1,
        c2: Math.max(1, Math.round(400 * 0.72 ** (rank * (1 + index / 4))))
      }))
    )
  },
  mark: {type: 'line', clip: true, point: {size: 45}},
  encoding: {
    x: {field: 'c1', type: 'quantitative', title: 'Rank', scale: {domain: [0, 25]}},
    y: {
      field: 'c2',
      type: 'quantitative',
      title: 'Individuals, logarithmic scale',
      scale: {type: 'log', domain: [0.8, 1000], nice: false},
      axis: {values: [1, 10, 100, 1000]}
    },
    color: {field: 'c0', type: 'nominal', scale: colourScale, title: null},
    shape: {field: 'c0', type: 'nominal', scale: shapeScale, title: null}
  }
}

/** Counts by species and habitat as a heat map, whose legend is a gradient. */
export const heatMap: Spec = {
  data: {
    values: [
      'Carabus problematicus',
      'Pterostichus niger',
      'Abax parallelepipedus',
      'Nebria brevicollis'
    ].flatMap((species, row) =>
      habitats.map((name, column) => ({c0: species, c1: name, c2: (7 * row + 13 * column) % 29}))
    )
  },
  mark: 'rect',
  width: {step: 84},
  encoding: {
    y: {field: 'c0', type: 'nominal', sort: null, title: null, axis: {labelFontStyle: 'italic'}},
    x: {field: 'c1', type: 'nominal', sort: null, title: null, axis: {labelAngle: 0}},
    color: {field: 'c2', type: 'quantitative', title: 'Individuals'}
  }
}

/** The season: small multiples over calendar time. */
export const season: Spec = {
  data: {
    values: habitats.flatMap((name, index) =>
      Array.from({length: 12}, (_, visit) => ({
        c0: name,
        c1: new Date(Date.UTC(2026, 3, 8 + 14 * visit)).toISOString().slice(0, 10),
        c2: 40 * Math.exp(-(((visit - 4 - index) / 2.4) ** 2))
      }))
    )
  },
  facet: {row: {field: 'c0', type: 'nominal', sort: habitats, title: null}},
  spec: {
    height: 70,
    mark: {type: 'line', point: true},
    encoding: {
      x: {field: 'c1', type: 'temporal', scale: {type: 'utc'}, title: null},
      y: {field: 'c2', type: 'quantitative', title: null, axis: {tickCount: 3}},
      color: {field: 'c0', type: 'nominal', scale: colourScale, legend: null}
    }
  }
}

/** Every habitat style there is, with its symbol filled and open and its dash. */
export const styleSheet: Spec = {
  data: {
    values: habitatStyles(8).flatMap((style, index) =>
      [1, 2, 3].map((place) => ({c0: `Habitat ${index + 1}`, c1: place, ...style}))
    )
  },
  encoding: {
    y: {field: 'c0', type: 'nominal', sort: null, title: null},
    x: {field: 'c1', type: 'quantitative', title: 'Place'},
    color: {field: 'c0', type: 'nominal', legend: null, sort: null}
  },
  layer: [
    {
      mark: 'line',
      encoding: {
        strokeDash: {
          field: 'c0',
          type: 'nominal',
          legend: null,
          scale: {range: habitatStyles(8).map((style) => style.dash)}
        }
      }
    },
    {mark: {type: 'point', size: 70}, encoding: {shape: {field: 'c0', type: 'nominal', legend: null}}}
  ]
}

export const exampleSpecs: Readonly<Record<string, Spec>> = {
  bars,
  'points-with-error-bars': pointsWithErrorBars,
  'lines-with-bands': linesWithBands,
  'log-axis': logAxis,
  'heat-map': heatMap,
  season,
  'style-sheet': styleSheet
}
