/* The form of a calculator: reads the fields, writes the answers. calculator.js does the arithmetic. */
(function () {
  'use strict';

  function system() { return document.documentElement.getAttribute('data-units') === 'us' ? 'us' : 'metric'; }

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

  /* An untouched field starts afresh with the round figure of the system; what was typed is converted. */
  function toSystem(each, input) {
    var wanted = each.root.getAttribute('data-' + system() + '-unit');
    if (!each.touched) {
      if (each.select) each.select.value = wanted;
      each.input.value = each.root.getAttribute('data-' + system());
      return;
    }
    if (!each.select || each.select.value === wanted || input.many) return;
    try {
      var si = Swardbook.quantity.read(each.input.value, each.select.value);
      each.input.value = Swardbook.calculator.figures(Swardbook.calculator.inUnit(si, wanted), null);
      each.select.value = wanted;
    } catch (problem) {
      if (!problem.sentence) throw problem;
    }
  }

  function tell(each, sentence, isNote) {
    each.problem.textContent = sentence ? Swardbook.calculator.pretty(sentence) : '';
    each.problem.hidden = !sentence;
    each.problem.classList.toggle('sb-calculator__problem--note', Boolean(isNote));
    if (sentence && !isNote) each.input.setAttribute('aria-invalid', 'true');
    else each.input.removeAttribute('aria-invalid');
  }

  function units(result, weighed) {
    var pair = weighed && result.weighed ? result.weighed : [result.unit, result.us];
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
      if (sentence) list.appendChild(Swardbook.element('li', 'sb-calculator__remark sb-calculator__remark--note', sentence));
    });
    out.said.forEach(function (each) {
      list.appendChild(Swardbook.element('li', 'sb-calculator__remark sb-calculator__remark--' + each.weight, each.say));
    });
    list.hidden = !list.firstChild;
  }

  function start(root) {
    var spec = (Swardbook.calculators || {})[root.getAttribute('data-calculator')];
    if (!spec) return; /* Its script is not on this page: it stays as printed, its fields shut. */
    var inputs = {};
    spec.inputs.forEach(function (input) { inputs[input.name] = input; });
    var fields = Array.prototype.map.call(root.querySelectorAll('[data-input]'), field);
    var status = root.querySelector('[role="status"]');
    var waiting = root.querySelector('[data-until-answered]');
    var timer = null;

    function update() {
      var typed = {};
      fields.forEach(function (each) { typed[each.name] = { text: each.input.value, unit: unitOf(each) }; });
      var out = Swardbook.calculator.run(spec, typed);
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
      fields.forEach(function (each) { if (each.root.contains(event.target)) each.touched = true; });
      update();
    }

    function change() {
      fields.forEach(function (each) { toSystem(each, inputs[each.name]); });
      update();
    }

    root.querySelector('form').addEventListener('submit', function (event) { event.preventDefault(); });
    root.addEventListener('input', touch);
    document.addEventListener('swardbook:units', change);
    root.querySelector('fieldset').disabled = false;
    change();
    status.textContent = '';
    window.clearTimeout(timer);
  }

  Swardbook.component('calculator', start);
})();
