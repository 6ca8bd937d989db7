/* The form of a calculator: reads the fields, writes the answers. calculator.js does the arithmetic. */
(function () {
  'use strict';

  var system = Swardbook.readerUnits.system;

  function field(root) {
    return {
      root: root,
      name: root.getAttribute('data-input'),
      input: root.querySelector('.sb-calculator__input'),
      select: root.querySelector('.sb-calculator__unit'),
      problem: root.querySelector('.sb-calculator__problem'),
      touched: false
    };
  }

  function unitOf(each) { return each.select ? each.select.value : each.root.getAttribute('data-metric-unit'); }

  /* The unit that this reader last chose for this field, in this system; null for the usual one. */
  function remembered(each, calculator) {
    var unit = each.select ? Swardbook.preferences.get(rememberedAs(each, calculator)) : null;
    return unit && Swardbook.list(each.select.options).some(function (option) { return option.value === unit; }) ? unit : null;
  }

  function rememberedAs(each, calculator) { return ['unit', calculator, each.name, system()].join('.'); }

  /* An untouched field starts afresh with the round figure of the system; what was typed is converted. */
  function toSystem(each, input, calculator) {
    var usual = each.root.getAttribute('data-' + system() + '-unit');
    var wanted = remembered(each, calculator) || usual;
    if (!each.touched) {
      var start = each.root.getAttribute('data-' + system());
      if (each.select) each.select.value = wanted;
      each.input.value = start && !input.many ? inOther(start, usual, wanted) : start;
      return;
    }
    if (!each.select || each.select.value === wanted || input.many) return;
    try {
      var si = Swardbook.quantity.read(each.input.value, each.select.value);
      each.input.value = Swardbook.calculator.figures(Swardbook.calculator.inUnit(si, wanted), null);
      each.select.value = wanted;
    } catch (problem) {
      Swardbook.sentenceOf(problem);
    }
  }

  function inOther(text, unit, wanted) {
    if (unit === wanted || Swardbook.quantity.unit(unit).dimension !== Swardbook.quantity.unit(wanted).dimension) return text;
    var si = Swardbook.quantity.read(text, unit);
    return Swardbook.calculator.figures(Swardbook.calculator.inUnit(si, wanted), null);
  }

  function tell(each, sentence, isNote) {
    each.problem.textContent = sentence ? Swardbook.calculator.pretty(sentence) : '';
    each.problem.hidden = !sentence;
    each.problem.classList.toggle('sb-calculator__problem--note', Boolean(isNote));
    Swardbook.markInvalid(each.input, sentence && !isNote);
  }

  function units(result, weighed) {
    var pair = weighed && result.weighed ? result.weighed : [result.unit, result.us || result.unit];
    return system() === 'us' ? [pair[1], pair[0]] : pair;
  }

  function writeResult(root, result, out) {
    var C = Swardbook.calculator;
    var box = root.querySelector('[data-result="' + result.name + '"]');
    var exact = root.querySelector('[data-exact="' + result.name + '"] .sb-calculator__exact span');
    var si = out.results[result.name];
    var pair = units(result, out.weighed);
    var answered = si !== undefined;
    var here = answered ? C.pretty(C.show(si, pair[0], result.decimals)) : '–';
    var there = answered ? C.pretty(C.show(si, pair[1], result.decimals)) : '';
    if (box) {
      var other = box.querySelector('.sb-calculator__other');
      box.querySelector('.sb-calculator__figure').textContent = here;
      other.textContent = there;
      other.hidden = !answered || there === here;
    }
    if (exact) exact.textContent = answered ? C.pretty(C.exact(si, pair[0])) : '–';
    return result.label + ' ' + here;
  }

  function writeSaid(root, spec, out) {
    var list = root.querySelector('.sb-calculator__said');
    list.textContent = '';
    spec.results.forEach(function (result) {
      var sentence = out.noAnswer[result.name];
      if (sentence) Swardbook.add(list, 'li', 'sb-calculator__remark sb-calculator__remark--note', sentence);
    });
    out.said.forEach(function (each) {
      Swardbook.add(list, 'li', 'sb-calculator__remark sb-calculator__remark--' + each.weight, each.say);
    });
    list.hidden = !list.firstChild;
  }

  function start(root) {
    var id = root.getAttribute('data-calculator');
    var spec = (Swardbook.calculators || {})[id];
    if (!spec) return; /* Its script is not on this page: it stays as printed, its fields shut. */
    var inputs = {};
    spec.inputs.forEach(function (input) { inputs[input.name] = input; });
    var fields = Swardbook.list(root.querySelectorAll('[data-input]')).map(field);
    var status = root.querySelector('[role="status"]');
    var waiting = root.querySelector('[data-until-answered]');
    var timer = null;

    function run() {
      var typed = {};
      fields.forEach(function (each) { typed[each.name] = { text: each.input.value, unit: unitOf(each) }; });
      return Swardbook.calculator.run(spec, typed);
    }

    function update() {
      var out = run();
      fields.forEach(function (each) {
        var empty = !each.touched && !each.input.value;
        tell(each, empty ? '' : out.problems[each.name] || out.notes[each.name], !out.problems[each.name]);
      });
      var words = spec.results.map(function (result) { return writeResult(root, result, out); });
      writeSaid(root, spec, out);
      if (waiting) waiting.hidden = Object.keys(out.results).length === spec.results.length;
      /* Read out when the typing pauses, not at every key. */
      window.clearTimeout(timer);
      timer = window.setTimeout(function () { status.textContent = words.join('. '); }, 900);
    }

    function touch(event) {
      fields.forEach(function (each) {
        if (!each.root.contains(event.target)) return;
        each.touched = true;
        if (event.target === each.select) Swardbook.preferences.set(rememberedAs(each, id), each.select.value);
      });
      update();
    }

    function fieldOf(name) { return fields.filter(function (each) { return each.name === name; })[0]; }

    /* Fills a field as if its reader had; unit: one that the field offers, or null to leave it. */
    function set(each, text, unit) {
      each.input.value = text;
      if (unit && each.select) each.select.value = unit;
      each.touched = true;
      update();
      each.root.dispatchEvent(new CustomEvent('swardbook:set', { bubbles: true }));
    }

    /* True when a text is a possible value of a field. */
    function reads(each, text) {
      var typed = {};
      fields.forEach(function (other) { typed[other.name] = { text: other === each ? text : '', unit: unitOf(other) }; });
      return !Swardbook.calculator.run(spec, typed).problems[each.name];
    }

    /* Published figures by their name: they stand in the fields as if typed, and may be typed over. */
    function offer(select) {
      if (!select) return;
      select.addEventListener('change', function () {
        var fills = JSON.parse(select.value);
        Object.keys(fills).forEach(function (name) { set(fieldOf(name), fills[name][0], fills[name][1]); });
      });
    }

    function change() {
      fields.forEach(function (each) { toSystem(each, inputs[each.name], id); });
      update();
    }

    root.addEventListener('submit', function (event) { event.preventDefault(); });
    root.addEventListener('input', touch);
    document.addEventListener('swardbook:units', change);
    Swardbook.each(root, 'fieldset', function (each) { each.disabled = false; });
    change();
    offer(root.querySelector('select[data-part=published]'));
    var form = { root: root, spec: spec, fields: fields, field: fieldOf, unitOf: unitOf, units: units, run: run, set: set, reads: reads };
    Swardbook.calculatorShare(form);
    Swardbook.calculatorTurn(form);
    Swardbook.calculatorLawn(form);
    status.textContent = '';
    window.clearTimeout(timer);
  }

  Swardbook.component('calculator', start);
})();
