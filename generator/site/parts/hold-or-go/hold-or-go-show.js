/* Hold or go in words: the answer with its sign, every reason with what would change it and where it comes from, what is still to
   be said, and what was asked and does not stand against it. Texts are the book's own. */
(function () {
  'use strict';
  var SHAPES = {
    go: ['M12 2.2a9.8 9.8 0 1 1 0 19.6 9.8 9.8 0 0 1 0-19.6z', 'M7.2 12.4l3.4 3.4 6.4-7.2'],
    care: ['M12 2.5 22.5 21.5H1.5z', 'M12 9v6M12 18v.6'],
    hold: ['M8 2h8l6 6v8l-6 6H8l-6-6V8z', 'M7 12h10'],
    ask: ['M12 2.2a9.8 9.8 0 1 1 0 19.6 9.8 9.8 0 0 1 0-19.6z', 'M9.2 9.4a2.9 2.9 0 1 1 4.2 2.7c-.9.5-1.4 1-1.4 2M12 17v.6']
  };
  var FEW = 3;
  var COULD = { hold: 'Not known, could hold the work', care: 'Not known, could ask for care' };
  var here = document.currentScript && document.currentScript.src;
  /* The address of the site, so that links lead from any page; none where the script is not a file of its own. */
  var root = here && /assets\/[^\/]*$/.test(here) ? here.replace(/assets\/[^\/]*$/, '') : '';

  var add = Swardbook.add, capital = Swardbook.capital, small = Swardbook.small;
  function rules() { return Swardbook.holdRules; }
  function once(all) { return all.filter(function (each, position) { return all.indexOf(each) === position; }); }

  function link(parent, path, text, className) {
    if (!root) { return add(parent, 'span', className, text); }
    var made = add(parent, 'a', className, text);
    made.href = root + path;
    return made;
  }

  function shape(answer) {
    var space = 'http://www.w3.org/2000/svg', svg = document.createElementNS(space, 'svg');
    svg.setAttribute('class', 'sb-hold__shape');
    svg.setAttribute('viewBox', '0 0 24 24');
    svg.setAttribute('aria-hidden', 'true');
    SHAPES[answer].forEach(function (drawn, number) {
      var path = svg.appendChild(document.createElementNS(space, 'path'));
      path.setAttribute('class', number ? 'sb-hold__stroke' : 'sb-hold__plate');
      path.setAttribute('d', drawn);
    });
    return svg;
  }

  /* parts: {answer, sign, said}; now: what onAnswer is told. The same words are not said again. */
  function headline(parts, now) {
    var more = now.names.length ? now.names[0] + (now.names.length > 1 ? ', and ' + (now.names.length - 1) + ' more.' : '.') + (now.again ? ' Ask again ' + now.again + '.' : '')
      : now.answer === 'go' ? 'Nothing asked here speaks against it.'
        : 'Say what the day is like: ' + (now.open.length > FEW ? now.open.length + ' questions are open.' : now.open.map(small).join(', ') + '.');
    var said = parts.said;
    if (said.textContent === Swardbook.told(now.words + '. ' + more)) { return; }
    parts.answer.className = 'sb-hold__answer sb-hold__answer--' + now.answer;
    parts.sign.textContent = '';
    parts.sign.appendChild(shape(now.answer));
    said.textContent = '';
    add(said, 'strong', 'sb-hold__word', now.words);
    add(said, 'span', 'sb-hidden', '. ');
    add(said, 'span', 'sb-hold__names', more);
  }

  function sources(parent, rule) {
    if (!rule.from.length && !rule.fromMemory) { return; }
    var marks = add(parent, 'span', 'sb-source-marks');
    add(marks, 'span', 'sb-hidden', 'Source: ');
    rule.from.forEach(function (source, number) {
      if (number) { add(marks, 'span', 'sb-source-marks__comma', ', '); }
      var kind = 'sb-source-marks__mark sb-source-marks__mark--';
      if (source.id) { link(marks, 'sources.html#' + source.id, source.label, kind + 'published'); }
      else { add(marks, 'span', kind + source.label, source.label); }
    });
  }

  function reason(list, each) {
    var item = add(list, 'li', 'sb-hold__rule sb-hold__rule--' + each.rule.answer);
    var head = add(item, 'p', 'sb-hold__because');
    add(head, 'strong', '', capital(rules().answers[each.rule.answer]) + ': ' + rules().holds[each.hold].name + '.');
    head.appendChild(document.createTextNode(' ' + each.said));
    var change = add(item, 'p', 'sb-hold__change');
    add(change, 'strong', '', 'What would change it: ');
    change.appendChild(document.createTextNode(each.rule.change));
    var from = add(item, 'p', 'sb-hold__from');
    Swardbook.words(add(from, 'span', 'sb-hold__if'), ['The rule: '].concat(each.rule['if']));
    from.appendChild(document.createTextNode('. '));
    sources(from, each.rule);
    if (each.rule.note) { add(from, 'span', 'sb-note', ' ' + each.rule.note); }
  }

  function reasons(why, found) {
    if (!found.reasons.length) { return; }
    var list = add(why, 'ul', 'sb-hold__reasons');
    found.reasons.forEach(function (each) { reason(list, each); });
  }

  /* What nobody has said yet, while the questions are folded. could: by field, the gravest that hangs on it; names: by field. */
  function unknowns(why, could, names, goTo) {
    Object.keys(COULD).forEach(function (gravest) {
      var several = Object.keys(could).filter(function (id) { return could[id] === gravest; });
      if (!several.length) { return; }
      add(why, 'p', 'sb-hold__open', COULD[gravest] + '.');
      var list = add(why, 'ul', 'sb-chips sb-hold__open');
      several.forEach(function (id) {
        add(list, 'li').appendChild(Swardbook.button(names[id], function () { goTo(id); }));
      });
    });
  }

  function rest(why, found, goTo) {
    found.presumed.forEach(function (id) {
      var line = add(why, 'p', 'sb-hold__presumed', Swardbook.filled(rules().sentences.presumed, { none: rules().questions[id].none }) + ' ');
      line.appendChild(Swardbook.button(rules().questions[id].name, function () { goTo(id); }));
    });
    var quiet = found.quiet.map(function (id) { return rules().holds[id].name; });
    if (quiet.length) { add(why, 'p', 'sb-hold__quiet', 'Asked, and no reason to wait: ' + quiet.map(small).join('; ') + '.'); }
    var cautions = once([].concat.apply([], found.reasons.map(function (each) { return rules().holds[each.hold].cautions; })));
    if (!cautions.length) { return; }
    var line = add(why, 'p', 'sb-hold__cautions', 'Take care: ');
    cautions.forEach(function (id, number) {
      if (number) { line.appendChild(document.createTextNode(', ')); }
      link(line, 'cautions/' + id + '.html', rules().cautions[id]);
    });
  }

  Swardbook.holdShow = {
    could: COULD, once: once, headline: headline,
    why: function (element, found, could, names, goTo) {
      element.textContent = '';
      reasons(element, found);
      unknowns(element, could, names, goTo);
      rest(element, found, goTo);
    }
  };
})();
