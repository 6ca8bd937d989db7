/* 'The lawn so far' on the page of a shape: adds the piece that stands in the calculator, lists what is there, hands the sum on. */
(function () {
  'use strict';
  if (Swardbook.lawnPanel) return;
  Swardbook.lawnPanel = true;

  /* The shape's calculator on this page, as far as this needs it; null where there is none (the gallery of components). */
  function shapeOf(id) {
    var spec = (Swardbook.calculators || {})[id];
    var root = document.querySelector('.sb-calculator[data-calculator="' + id + '"]');
    return spec && root ? { spec: spec, root: root } : null;
  }

  function typedIn(shape) {
    var typed = {};
    shape.spec.inputs.forEach(function (input) {
      var field = shape.root.querySelector('[data-input="' + input.name + '"]');
      var select = field.querySelector('.sb-calculator__unit');
      typed[input.name] = { text: field.querySelector('.sb-calculator__input').value, unit: select ? select.value : field.getAttribute('data-metric-unit'), field: field };
    });
    return typed;
  }

  function inWords(given) {
    return Swardbook.calculator.pretty(Swardbook.readerUnits.beside(given.text, given.unit));
  }

  /* '12 m × 8 m'; where the inputs are not all lengths each says what it is. An input that may stay as it is, and did, is left out. */
  function sizes(shape, typed) {
    var metre = Swardbook.quantity.unit('m').dimension;
    var shown = shape.spec.inputs.filter(function (input) {
      var given = typed[input.name];
      var starts = [given.field.getAttribute('data-metric'), given.field.getAttribute('data-us')];
      return !given.field.closest('.sb-calculator__more') || starts.indexOf(given.text) < 0;
    });
    var lengths = shown.length === 1 || shown.every(function (input) { return !input.many && Swardbook.quantity.unit(input.unit).dimension === metre; });
    var words = shown.map(function (input) { return (lengths ? '' : input.question + ': ') + inWords(typed[input.name]); }).join(lengths ? ' × ' : '; ');
    return words.length > Swardbook.lawn.longest.sizes ? words.slice(0, Swardbook.lawn.longest.sizes - 1) + '…' : words;
  }

  /* Why there is no such piece, in the calculator's own sentences; '' where there is one. */
  function fault(shape, out) {
    var amiss = shape.spec.inputs.filter(function (input) { return out.problems[input.name]; })[0];
    if (amiss) return amiss.question + ': ' + Swardbook.small(out.problems[amiss.name]);
    var danger = out.said.filter(function (each) { return each.weight === 'danger'; })[0];
    if (danger) return danger.say;
    if (out.noAnswer.area) return out.noAnswer.area;
    return out.results.area > 0 ? '' : 'Its area comes to nothing.';
  }

  Swardbook.component('lawn-pieces', function (root) {
    var lawn = Swardbook.lawn;
    var shape = shapeOf(root.getAttribute('data-calculator'));
    var name = root.getAttribute('data-piece');
    var before = []; /* What was taken off last, to be put back. */
    var parts = Swardbook.parts(root);

    function put(hole) {
      var typed = typedIn(shape);
      var out = Swardbook.calculator.run(shape.spec, typed);
      var words = sizes(shape, typed);
      var piece = { name: name.slice(0, lawn.longest.piece), sizes: words, area: out.results.area, hole: hole };
      var wrong = fault(shape, out);
      if (!wrong && !lawn.fits(piece)) wrong = 'It is too ' + (piece.area < 1 ? 'small' : 'large') + ' for a lawn.';
      if (!wrong && !lawn.rows().room()) wrong = 'The lawn holds ' + lawn.rows().most + ' pieces, and no more fit.';
      if (wrong) {
        say(parts.answered, name + (words ? ', ' + words + ',' : '') + ' cannot be ' + (hole ? 'taken away' : 'added') + '. ' + wrong);
        return;
      }
      before = [];
      lawn.rows().add(piece);
      say(parts.answered, name + ', ' + words + ', is ' + (hole ? 'taken away' : 'added') + ': ' + lawn.show(piece.area) + '. ' + sum());
      parts.done.textContent = '';
    }

    function sum() {
      var area = lawn.area();
      return area < 0 ? 'The holes are now larger than the pieces.' : 'The lawn is now ' + lawn.show(area) + ', of ' + lawn.count() + '.';
    }

    function say(place, sentence) { place.textContent = Swardbook.calculator.pretty(sentence); }

    function takeOff(pieces, sentence) {
      lawn.rows().together(function () { before = pieces.map(function (each) { return lawn.rows().remove(each.id); }).filter(Boolean); });
      write();
      say(parts.done, sentence());
      parts.answered.textContent = '';
      parts.undo.focus();
    }

    function remove(piece) {
      takeOff([piece], function () { return piece.name + ', ' + piece.sizes + ', is off the list. ' + (lawn.pieces().length ? sum() : 'No piece is left.'); });
    }

    /* The lawn in words, for a file. */
    function inFile() {
      var lines = lawn.pieces().map(function (each) { return (each.hole ? '- ' : '+ ') + each.name + ', ' + each.sizes + ': ' + lawn.show(each.area); });
      return { name: 'lawn.txt', kind: 'text/plain', text: lines.concat(['Area of grass: ' + lawn.show(lawn.area())]).join('\n') + '\n' };
    }

    function row(piece, at) {
      var made = Swardbook.element('li', 'sb-lawn-pieces__piece');
      var sign = made.appendChild(Swardbook.element('span', 'sb-lawn-pieces__sign', piece.hole ? '−' : '+'));
      var what = made.appendChild(Swardbook.asWritten(Swardbook.element('span', 'sb-lawn-pieces__what')));
      var button = Swardbook.button('Remove', function () { remove(piece); });
      sign.setAttribute('aria-hidden', 'true');
      what.appendChild(Swardbook.element('span', 'sb-hidden', piece.hole ? 'Taken away: ' : 'Added: '));
      what.appendChild(Swardbook.element('strong', '', piece.name));
      what.appendChild(document.createTextNode(' '));
      what.appendChild(Swardbook.element('span', 'sb-note', piece.sizes));
      made.appendChild(Swardbook.element('span', 'sb-lawn-pieces__area', lawn.show(piece.area)));
      button.setAttribute('data-print-hidden', '');
      button.appendChild(Swardbook.element('span', 'sb-hidden', ' piece ' + (at + 1) + ': ' + piece.name + ', ' + piece.sizes));
      made.appendChild(button);
      return made;
    }

    function aim() {
      if (parts.target.value) parts.open.href = parts.target.value + '#v=1&area=' + encodeURIComponent(lawn.typed(lawn.area(), lawn.unit())) + '+' + lawn.unit();
    }

    function write() {
      var pieces = lawn.pieces();
      var area = lawn.area();
      var short = lawn.takenAway() > lawn.added();
      Swardbook.relist(parts.list, pieces, row);
      root.toggleAttribute('data-filled', pieces.length > 0);
      [parts.list, parts.total, parts.clear].forEach(function (each) { each.hidden = !pieces.length; });
      parts.none.hidden = pieces.length > 0;
      parts.figure.textContent = lawn.show(area);
      parts.other.textContent = lawn.show(area, lawn.otherUnit());
      parts.problem.hidden = !pieces.length || area > 0;
      parts.problem.textContent = short
        ? 'More is taken away (' + lawn.show(lawn.takenAway()) + ') than the pieces hold (' + lawn.show(lawn.added()) + '). A piece is missing, or a hole is counted twice.'
        : 'Nothing is left. Check the pieces and the holes.';
      parts['hand-on'].hidden = !(area > 0) || !parts.target.options.length;
      parts['hand-on-label'].textContent = 'Use ' + lawn.show(area) + ' in';
      parts.open.textContent = 'Open with ' + lawn.show(area);
      parts['to-lawn'].hidden = !(area > 0) || !Swardbook.lawns.chosen();
      if (!parts['to-lawn'].hidden) parts.keep.textContent = 'Keep as the area of lawn ' + Swardbook.lawns.chosen().code;
      parts.undo.hidden = !before.length;
      if (!parts['hand-on'].hidden) aim();
    }

    if (shape) {
      /* Beside the answer it is about, which stands well above the list. */
      shape.root.querySelector('.sb-calculator__answers').appendChild(parts.add);
      parts.add.hidden = false;
      parts['add-piece'].addEventListener('click', function () { put(false); });
      parts['take-away'].addEventListener('click', function () { put(true); });
      shape.root.addEventListener('input', function () { parts.answered.textContent = ''; });
    }
    parts.target.addEventListener('change', aim);
    /* The pieces become those of the chosen lawn, with their sum. */
    parts.keep.addEventListener('click', function () {
      var chosen = Swardbook.lawns.chosen(), rows = Swardbook.lawns.rows(), was = chosen && rows.get(chosen.id);
      if (!was) return;
      var pieces = lawn.pieces().map(function (each) { return { name: each.name, sizes: each.sizes, area: each.area, hole: each.hole }; });
      rows.change(chosen.id, was, Object.assign({}, was, { pieces: pieces, area: lawn.typed(lawn.area(), lawn.unit()) + ' ' + lawn.unit() }));
      say(parts.done, 'Lawn ' + was.code + ' now has ' + lawn.show(lawn.area()) + ' of grass, in ' + lawn.count() + '.');
    });
    parts.clear.addEventListener('click', function () {
      takeOff(lawn.pieces(), function () { return 'The list is empty: a new lawn can begin.'; });
    });
    parts.undo.addEventListener('click', function () {
      var wanted = before;
      before = [];
      lawn.rows().together(function () { wanted.forEach(lawn.rows().restore); });
      write();
      say(parts.done, 'It is back. ' + sum());
      parts.clear.focus();
    });
    parts.body.hidden = false;
    Swardbook.keptNotice(parts.body, 'lawn', inFile, root.parentElement); /* The calculator stands beside this list. */
    lawn.follow(write);
    Swardbook.lawns.follow(write);
  });
})();
