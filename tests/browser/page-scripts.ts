/*
 * What the tests ask of a page, as scripts that run in it. They are text, because the code of this project has no
 * browser around it and must not type-check as if it had.
 */

/** How far the page is wider than the screen, in pixels. */
export const overflowSideways = 'document.documentElement.scrollWidth - document.documentElement.clientWidth'

/** Things that a box cuts off without letting anybody move it, and things that stick out of the page. */
export const cutOff = `(() => {
  const width = document.documentElement.clientWidth
  const isScrolled = (element) => element.closest('.scroll, .plate') !== null
  const name = (element) => element.tagName.toLowerCase() + (element.id ? '#' + element.id : '') + ' ' + element.textContent.trim().slice(0, 40)
  return [...document.querySelectorAll('body *')].flatMap((element) => {
    if (element.closest('svg') !== null || !element.checkVisibility()) return []
    const {overflowX} = getComputedStyle(element)
    const hides = ['hidden', 'clip'].includes(overflowX) && element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 1
    const {left, right, width: own} = element.getBoundingClientRect()
    const sticksOut = own > 1 && !isScrolled(element) && (right > width + 1 || (left < -1 && right > 0))
    return [...(hides ? ['hides part of ' + name(element)] : []), ...(sticksOut ? ['sticks out: ' + name(element)] : [])]
  })
})()`

/** Boxes wider than the screen that no key can move. */
export const unreachableBoxes = `[...document.querySelectorAll('body *')].filter((element) =>
  element.closest('svg') === null && element.checkVisibility() && element.scrollWidth > element.clientWidth + 1 &&
  ['auto', 'scroll'].includes(getComputedStyle(element).overflowX) && element.tabIndex !== 0
).map((element) => element.outerHTML.slice(0, 80))`

/** Texts of charts that are cut off, or lie on other texts, by more than a pixel. */
export const crowdedChartTexts = `[...document.querySelectorAll('figure svg')].flatMap((svg) => {
  const frame = svg.getBoundingClientRect()
  const texts = [...svg.querySelectorAll('text')].filter((text) => text.textContent.trim() !== '')
  const boxes = texts.map((text) => {
    const {left, right, top, bottom, height} = text.getBoundingClientRect()
    // A line of text is higher than its letters: a fifth of it, above and below, is air.
    const air = text.transform?.baseVal?.consolidate()?.matrix.b ? 0 : height / 5
    return {words: text.textContent, left, right, top: top + air, bottom: bottom - air}
  })
  const within = (box) =>
    box.left >= frame.left - 1 && box.right <= frame.right + 1 && box.top >= frame.top - 1 && box.bottom <= frame.bottom + 1
  const apart = (a, b) => a.right <= b.left + 1 || b.right <= a.left + 1 || a.bottom <= b.top + 1 || b.bottom <= a.top + 1
  const id = svg.closest('figure').id
  const cut = boxes.filter((box) => !within(box)).map(({words}) => id + ' cuts: ' + words)
  const over = boxes.flatMap((one, index) =>
    boxes.slice(index + 1).filter((other) => !apart(one, other)).map((other) => id + ': ' + one.words + ' / ' + other.words))
  return [...cut, ...over]
})`

/**
 * Texts of charts whose contrast with the paper is below 4.5 (WCAG 2.2, 1.4.3), and lines and marks below 3 (1.4.11)
 * are not looked at here: their colours have tests of their own.
 */
export const faintChartTexts = `[...document.querySelectorAll('figure .plate')].flatMap((plate) => {
  const channels = (colour) => colour.match(/[\\d.]+/g).slice(0, 3).map(Number)
  const luminance = (colour) => {
    const [r, g, b] = channels(colour).map((value) => {
      const part = value / 255
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
    })
    return 0.2126 * r + 0.7152 * g + 0.0722 * b
  }
  const {backgroundColor} = getComputedStyle(plate)
  // What has no background of its own, printed, stands on white.
  const paper = luminance(backgroundColor === 'rgba(0, 0, 0, 0)' ? 'rgb(255, 255, 255)' : backgroundColor)
  return [...plate.querySelectorAll('svg text')].filter((text) => text.textContent.trim() !== '').flatMap((text) => {
    const {fill, opacity, fillOpacity} = getComputedStyle(text)
    const ink = luminance(fill)
    const contrast = (Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05)
    const seen = Number(opacity) * Number(fillOpacity)
    return contrast >= 4.5 && seen === 1 ? [] : [text.textContent + ': ' + contrast.toFixed(2) + ', opacity ' + seen]
  })
})`

/** Marks everything that the keyboard should reach, in order, and tells how many there are. */
export const markReachable = `(() => {
  const reachable = [...document.querySelectorAll('a[href], summary, [tabindex="0"]')].filter((element) =>
    element.checkVisibility() && element.closest('details:not([open])')?.querySelector('summary') !== element &&
    (element.matches('summary') || element.closest('details:not([open])') === null))
  const all = [...document.querySelectorAll('summary'), ...reachable].filter((element) => element.checkVisibility())
  const inOrder = [...new Set(all)].sort((a, b) => (a.compareDocumentPosition(b) & 4 ? -1 : 1))
  inOrder.forEach((element, index) => { element.dataset.stop = String(index) })
  document.activeElement?.blur()
  return inOrder.length
})()`

/** Which of them has the focus, and whether that can be seen. */
export const focusedStop = `(() => {
  const element = document.activeElement
  if (element === null || element === document.body) return 'nothing'
  const {outlineStyle, outlineWidth} = getComputedStyle(element)
  const isSeen = outlineStyle !== 'none' && parseFloat(outlineWidth) > 0
  return (element.dataset.stop ?? element.outerHTML.slice(0, 80)) + (isSeen ? '' : ' unseen')
})()`

/** Where each row, figure and heading begins and ends: signs too small to change anything, found again on paper. */
export const markForPaper = `(() => {
  const sign = (words) => {
    const mark = document.createElement('span')
    mark.textContent = '\\u00a7' + words + '\\u00a7'
    mark.style.cssText = 'font: 1px sans-serif; letter-spacing: 0; color: #fff; white-space: nowrap; text-indent: 0'
    mark.ariaHidden = 'true'
    return mark
  }
  const pairs = []
  const pair = (kind, from, to, words) => {
    const number = pairs.push({kind, words: words.trim().replace(/\\s+/g, ' ').slice(0, 60)}) - 1
    from(sign('a' + number))
    to(sign('z' + number))
  }
  for (const row of document.querySelectorAll('main table tr')) {
    if (!row.checkVisibility()) continue
    const cells = [...row.children]
    pair('row', (mark) => cells[0].prepend(mark), (mark) => cells.reduce((a, b) => (b.textContent.length > a.textContent.length ? b : a)).append(mark), row.textContent)
  }
  for (const figure of document.querySelectorAll('main figure')) {
    const caption = figure.querySelector('figcaption')
    pair('figure', (mark) => figure.prepend(mark), (mark) => caption.append(mark), caption.textContent)
  }
  for (const table of document.querySelectorAll('main table')) {
    const first = table.querySelector('tbody tr')
    if (first?.checkVisibility() && table.caption) pair('caption', (mark) => table.caption.append(mark), (mark) => first.firstElementChild.append(mark), table.caption.textContent)
  }
  for (const heading of document.querySelectorAll('main :is(h1, h2, h3, h4)')) {
    let next = heading.nextElementSibling
    while (next !== null && !next.checkVisibility()) next = next.nextElementSibling
    if (next === null) continue
    const start = next.querySelector('caption, figure, li') ?? next
    pair('heading', (mark) => heading.append(mark), (mark) => start.prepend(mark), heading.textContent)
  }
  return pairs
})()`
