/* "Turn it round": the reader gives an answer and gets the input that leads to it. calculator-solve.js does the arithmetic. */
(function () {
  'use strict';

  Swardbook.calculatorTurn = function (form) {
    var box = form.root.querySelector('.sb-calculator__turn');
    if (!box) return;
    var result = box.querySelector('[data-part=result]');
    var amount = box.querySelector('[data-part=amount]');
    var unit = box.querySelector('[data-part=unit]');
    var input = box.querySelector('[data-part=input]');
    var answer = box.querySelector('[data-part=answer]');
    var use = box.querySelector('[data-part=use]');
    var timer = null;
    var found = null;

    function say(text) { answer.textContent = text ? Swardbook.calculator.pretty(text) : ''; }

    function work() {
      var C = Swardbook.calculator;
      var out = form.run();
      var chosen = form.spec.results.filter(function (each) { return each.name === result.value; })[0];
      var field = form.field(input.value);
      var resultUnit = form.units(chosen, out.weighed)[0];
      unit.textContent = C.pretty(resultUnit === '1' ? '' : resultUnit);
      found = null;
      use.hidden = true;
      if (!amount.value.trim()) { say(''); return; }
      var amiss = form.spec.inputs.filter(function (each) { return each.name !== field.name && out.problems[each.name]; })[0];
      if (amiss) { say('First fix this: ' + amiss.question + '. ' + out.problems[amiss.name]); return; }
      var inputUnit = form.unitOf(field);
      var solved = Swardbook.solve(form.spec, out.values, {
        result: chosen.name, text: amount.value, unit: resultUnit, input: field.name, resultUnit: resultUnit, inputUnit: inputUnit
      });
      if (solved.problem) { say(solved.problem); return; }
      found = { field: field, text: C.figures(C.inUnit(solved.si, inputUnit), 4) };
      use.hidden = false;
      var question = form.spec.inputs.filter(function (each) { return each.name === field.name; })[0].question;
      say(question + ': ' + C.show(solved.si, inputUnit) + '.' + (solved.remark ? ' ' + solved.remark : ''));
    }

    /* A search is long beside a sum: it waits until the typing pauses, and until somebody opens it. */
    function later() {
      window.clearTimeout(timer);
      if (box.open) timer = window.setTimeout(work, 150);
    }

    use.addEventListener('click', function () {
      if (found) form.set(found.field, found.text);
    });
    box.addEventListener('toggle', later);
    form.root.addEventListener('input', later);
    document.addEventListener('swardbook:units', later);
  };
})();
