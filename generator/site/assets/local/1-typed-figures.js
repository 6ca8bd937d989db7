/* Figures that a sentence holds as it was typed ('blades 25 mm apart'), in the units of a reader in the United States. Twin: typed figures. */
(function () {
  'use strict';
  var T = Swardbook.contract.typed_figures, figure = new RegExp(T.figure, 'g'), both = new RegExp(T.both, 'g');

  /* To `digits` places; a number half way goes to the even one, as in Python. */
  function rounded(value, digits) {
    var scaled = value * Math.pow(10, digits), below = Math.floor(scaled), half = scaled - below === 0.5 && value * 8 % 1 === 0;
    return half ? (below % 2 ? below + 1 : below) / Math.pow(10, digits) : Number(value.toFixed(digits));
  }

  function plain(value) {
    var size = Math.abs(value), digits = size >= 20 ? 0 : size >= 2 ? 1 : 2, text = rounded(value, digits).toFixed(digits);
    if (digits) text = text.replace(/0+$/, '').replace(/\.$/, '');
    text = text.replace(/\B(?=(\d{3})+(?!\d|\.))/g, ' ');
    return text === '-0' ? '0' : text.replace('-', '−');
  }

  /* To the nearest eighth, as a ruler reads; finer below a quarter inch as a decimal. */
  function inches(value) {
    if (value < 0.2) return rounded(value, 2).toFixed(2).replace(/0+$/, '').replace(/\.$/, '');
    var eighths = rounded(value * 8, 0), whole = Math.floor(eighths / 8);
    return (whole || '') + (T.eighths[eighths % 8] || '') || '0';
  }

  function converted(text, from, to) {
    var here = Swardbook.quantity.unit(from), there = Swardbook.quantity.unit(to);
    return (Number(text.replace(/,/g, '').replace('−', '-')) * here.factor + here.offset - there.offset) / there.factor;
  }

  function ofFigure(found, by, first, joined, last, spelling, us, at, text) {
    by = by || '';
    if (at && text.charAt(at - 1) === '/') return found; /* 'kg/100 m2' is a unit. */
    if (us) return by + us;
    var metric = T.spelt[spelling], from = by && metric === '°C' ? '°C difference' : metric, twin = T.twin[from], say = twin === 'in' ? inches : plain;
    var low = say(converted(first, from, twin)), high = last ? say(converted(last, from, twin)) : low;
    return by + (joined && joined !== ' to ' ? low + joined + high : low === high ? low : low + ' to ' + high) + ' ' + (Swardbook.own(T.shown, twin) ? T.shown[twin] : twin);
  }

  /* A text with its typed figures in US units; one that was typed in both keeps the US one. */
  Swardbook.inUsUnits = function (text) { return text.replace(both, '$1').replace(figure, ofFigure); };
})();
