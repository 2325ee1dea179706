/** Times the stages of a build, for `--timings`; every stage is passed on to the progress line. */
export function stopwatch(onStage: (stage: string) => void): {stage(name: string): void; text(): string} {
  const stages: {readonly name: string; readonly start: number}[] = []
  return {
    stage(name) {
      stages.push({name, start: performance.now()})
      onStage(name)
    },
    text() {
      const end = performance.now()
      const [first] = stages
      if (first === undefined) return ''
      const whole = end - first.start
      const lines = stages.map(({name, start}, index) => {
        const took = (stages[index + 1]?.start ?? end) - start
        const share = Math.round((100 * took) / whole)
        return `${String(Math.round(took)).padStart(7)} ms ${String(share).padStart(3)} %  ${name}\n`
      })
      return `${lines.join('')}${String(Math.round(whole)).padStart(7)} ms        in all\n`
    }
  }
}
