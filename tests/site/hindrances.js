// What axe-core finds on a page. Contrast is most of its time, and two texts with the same colours, sizes and grounds all the way
// up have the same contrast: it is measured on the first of each, unless the long run asks for every one.
async ([rules, everyText]) => {
  const LOOKS = [
    'color', 'fontSize', 'fontWeight', 'backgroundColor', 'backgroundImage', 'opacity', 'textShadow', 'filter', 'mixBlendMode', 'visibility', 'display', 'overflow',
  ]
  const CONTROLS = 'input, select, textarea, button'
  const look = (element, pseudo) => { const style = getComputedStyle(element, pseudo); return LOOKS.map(name => style[name]).join(';') }

  // A number for the looks of an element and of all it lies in; what is placed by hand may lie on anything, so it is like no other.
  const numbers = new Map(), looks = new Map()
  const likeness = element => {
    if (!element) return ''
    if (!looks.has(element)) {
      const placed = element.closest('article') && ['absolute', 'fixed', 'sticky'].includes(getComputedStyle(element).position)
      const text = [likeness(element.parentElement), look(element), look(element, '::before'), look(element, '::after'), placed ? looks.size : ''].join('|')
      if (!numbers.has(text)) numbers.set(text, numbers.size)
      looks.set(element, numbers.get(text))
    }
    return looks.get(element)
  }
  const firstOfEach = () => {
    const found = new Map()
    for (const element of document.body.querySelectorAll('*')) {
      const speaks = element.matches(CONTROLS) || [...element.childNodes].some(node => node.nodeType === Node.TEXT_NODE && node.data.trim())
      if (speaks && !found.has(likeness(element)) && element.getClientRects().length) found.set(likeness(element), element)
    }
    return [...found.values()]
  }

  if (!everyText) {
    firstOfEach().forEach(element => element.setAttribute('data-first-of-its-looks', ''))
    axe.configure({rules: [{id: 'color-contrast', selector: '[data-first-of-its-looks]'}]})
  }
  const found = await axe.run(document, {resultTypes: ['violations'], preload: false, ...(rules ? {runOnly: {type: 'rule', values: rules}} : {})})
  return found.violations.map(each => ({impact: each.impact, rule: each.id, where: each.nodes.slice(0, 3).map(node => node.target.join(' '))}))
}
