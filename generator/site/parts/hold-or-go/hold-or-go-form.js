/* One question of hold or go as a field: {root, name, focus(), show(text), trouble(sentence), open(words)}. Typed words are only
   ever put back as text. */
(function () {
  'use strict';
  var U = Swardbook.readerUnits, add = Swardbook.add;

  function unit(question) { return U.of(question.unit, question.us); }

  /* An SI value as this reader reads it: '0.47 in', '14 days'. */
  function shown(question, si) {
    return Swardbook.quantity.show(si, unit(question), 3, false) + ' ' + question.shown[U.us() ? 1 : 0];
  }

  /* A bare number with the unit that the reader uses beside it, so that switching units cannot change what was said. */
  function withUnit(question, text) { return U.beside(text, question.us && unit(question)); }

  function choice(parent, type, name, value, words, checked) {
    var label = add(parent, 'label', 'sb-hold__choice'), input = add(label, 'input');
    input.type = type;
    input.name = name;
    input.value = value;
    input.checked = checked;
    add(label, 'span', '', words);
    return input;
  }

  /* said(text, settled): called with each change; settled once the reader leaves the field. */
  function measured(root, id, question, said) {
    var words = {}, boxes = [], row = add(root, 'div', 'sb-hold__measured'), input = add(row, 'input', 'sb-input sb-hold__measure');
    if (question.none) { words[Swardbook.holdRules.none] = Swardbook.capital(question.none); }
    if (question.lately) { words[Swardbook.holdRules.unknown] = 'Nobody has looked'; }
    input.type = 'text';
    input.id = id;
    input.maxLength = Swardbook.contract.kept.longest.measure;
    input.inputMode = question.least === undefined || question.lately ? 'text' : 'decimal'; /* Some phones' number pads have no minus. */
    input.setAttribute('aria-describedby', id + '-how ' + id + '-trouble');
    Swardbook.words(add(row, 'span', 'sb-hold__unit'), [question.shown]);
    boxes = Object.keys(words).map(function (word) { return choice(row, 'checkbox', id + '-' + word, word, words[word], false); });
    function ticked() { return boxes.filter(function (box) { return box.checked; })[0]; }
    function text() { return ticked() ? ticked().value : withUnit(question, input.value); }
    function settle() { input.disabled = Boolean(ticked()); }
    input.addEventListener('input', function () { said(text(), false); });
    input.addEventListener('change', function () {
      input.value = withUnit(question, input.value);
      said(text(), true);
    });
    boxes.forEach(function (box) {
      box.addEventListener('change', function () {
        boxes.forEach(function (other) { other.checked = other === box && box.checked; });
        settle();
        said(text(), true);
      });
    });
    return {
      input: input, focus: function () { (ticked() || input).focus(); },
      show: function (now) {
        boxes.forEach(function (box) { box.checked = now === box.value; });
        input.value = ticked() ? '' : now;
        settle();
      }
    };
  }

  function chosen(root, id, words, said) {
    var row = add(root, 'div', 'sb-hold__choices');
    var inputs = Object.keys(words).map(function (value) { return choice(row, 'radio', id, value, words[value], value === ''); });
    function picked() { return inputs.filter(function (input) { return input.checked; })[0] || inputs[0]; }
    row.addEventListener('change', function () { said(picked().value, true); });
    return {
      focus: function () { picked().focus(); },
      show: function (now) { inputs.forEach(function (input) { input.checked = input.value === (now in words ? now : ''); }); }
    };
  }

  function listed(root, id, words, said) {
    var select = add(root, 'select', 'sb-input');
    select.id = id;
    Object.keys(words).forEach(function (value) { add(select, 'option', '', words[value]).value = value; });
    select.addEventListener('change', function () { said(select.value, true); });
    return {
      focus: function () { select.focus(); },
      show: function (now) { select.value = Swardbook.own(words, now) ? now : ''; }
    };
  }

  /* spec: {name, asks}, and unit, choices, or list (value to words). */
  function field(id, spec, said) {
    var group = Boolean(spec.choices), root = Swardbook.element(group ? 'fieldset' : 'div', 'sb-hold__field'), part;
    var title = add(root, group ? 'legend' : 'label', 'sb-hold__name', spec.name);
    if (!group) { title.htmlFor = id; }
    add(root, 'p', 'sb-hold__asks', spec.asks + '.').id = id + '-how';
    if (spec.list) {
      part = listed(root, id, spec.list, said);
    } else if (group) {
      var words = {};
      Object.keys(spec.choices).forEach(function (word) { words[word] = Swardbook.capital(word); });
      words[''] = 'Not known';
      part = chosen(root, id, words, said);
    } else { part = measured(root, id, spec, said); }
    var open = add(root, 'p', 'sb-hold__could'), trouble = add(root, 'p', 'sb-hold__trouble');
    trouble.id = id + '-trouble';
    trouble.setAttribute('role', 'status');
    part.root = root;
    part.name = spec.name;
    part.trouble = function (sentence) {
      trouble.textContent = sentence || '';
      if (part.input) { Swardbook.markInvalid(part.input, sentence); }
    };
    part.open = function (words) { open.textContent = words; };
    return part;
  }

  Swardbook.holdField = { field: field, shown: shown };
})();
