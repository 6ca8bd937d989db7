/* What a reader takes away from a calculator: its figures as text, as a link that carries them, or as a printed card. A link
   is #v=1&area=240+m2&depth=4+mm; whatever does not read as a value of its input makes the whole link damaged. */
(function () {
  'use strict';
  var LONGEST_FRAGMENT = Swardbook.fragment.longest;
  var NAME = /^[a-z][a-z0-9_]{0,59}$/;
  var VALUE = /^[0-9A-Za-z .,;\/%'"°²³½¼¾⅓⅔⅛⅜⅝⅞×*^+\n-]{1,280}$/;

  /* {} for no figures, null for a damaged link, else input name to text. */
  function particulars(fragment, known) {
    if (fragment.indexOf('=') < 0) return {};
    var found = Swardbook.fragment.read(fragment, function (name, value) {
      try {
        var text = decodeURIComponent(value.replace(/\+/g, ' '));
        return NAME.test(name) && VALUE.test(text) && known.indexOf(name) >= 0 ? text : null;
      } catch (error) {
        return null;
      }
    });
    if (!found) return null;
    delete found.v;
    return Object.keys(found).length ? found : null;
  }

  /* What stands in a field, with its unit where only a number was typed. */
  function withUnit(form, field) { return Swardbook.readerUnits.beside(field.input.value, form.unitOf(field)); }

  /* '240 m2' as its number and, where the field offers that unit, the unit. */
  function parted(field, text) {
    var cut = text.lastIndexOf(' ');
    var units = field.select ? Swardbook.list(field.select.options).map(function (option) { return option.value; }) : [field.root.getAttribute('data-metric-unit')];
    var unit = units.filter(function (each) { return text.slice(-each.length - 1) === ' ' + each; })
      .sort(function (a, b) { return b.length - a.length; })[0];
    if (cut < 0 || !unit) return { text: text, unit: null };
    return { text: text.slice(0, -unit.length - 1).trim(), unit: unit };
  }

  function address(form) {
    var given = form.root.getAttribute('data-address');
    if (given) return given;
    var link = form.root.querySelector('.sb-calculator__title a');
    return (link ? new URL(link.getAttribute('href'), window.location.href).href : window.location.href).split('#')[0];
  }

  function fragment(form, wanted) {
    return '#' + Swardbook.fragment.begin + form.fields.filter(wanted).map(function (field) {
      return '&' + field.name + '=' + encodeURIComponent(withUnit(form, field)).replace(/%20/g, '+');
    }).join('');
  }

  /* The whole of the figures, or what was typed of them; null where they do not fit or are no figures. */
  function linked(form) {
    var sound = form.fields.every(function (field) {
      var text = withUnit(form, field);
      return !text || (VALUE.test(text) && form.reads(field, text));
    });
    if (!sound) return null;
    var all = fragment(form, function (field) { return field.input.value.trim(); });
    if (all.length - 1 <= LONGEST_FRAGMENT) return address(form) + all;
    var typed = fragment(form, function (field) { return field.touched && field.input.value.trim(); });
    return typed.length - 1 <= LONGEST_FRAGMENT ? address(form) + typed : null;
  }

  function asText(form) {
    var C = Swardbook.calculator;
    var out = form.run();
    var lines = [form.root.querySelector('.sb-calculator__title').textContent, ''];
    form.spec.inputs.forEach(function (input) {
      lines.push(input.question + ': ' + (C.pretty(withUnit(form, form.field(input.name))) || '–'));
    });
    lines.push('');
    form.spec.results.forEach(function (result) {
      if (!form.root.querySelector('[data-result="' + result.name + '"]')) return;
      var pair = form.units(result, out.weighed);
      var si = out.results[result.name];
      var here = si === undefined ? '–' : C.show(si, pair[0], result.decimals);
      var there = si === undefined ? here : C.show(si, pair[1], result.decimals);
      lines.push(C.pretty(result.label + ': ' + here + (there === here ? '' : ' (' + there + ')')));
    });
    out.said.forEach(function (each) { lines.push('', each.say); });
    return lines.join('\n');
  }

  Swardbook.calculatorShare = function (form) {
    var root = form.root;
    var box = root.querySelector('.sb-calculator__share');
    var shown = box.querySelector('[data-part=text]');
    var told = box.querySelector('[data-part=told]');
    var damaged = root.querySelector('[data-part=damaged]');

    /* Shown as well as copied: a page from a folder may not be allowed to copy. */
    function offer(text, sentence) {
      shown.value = text;
      shown.hidden = false;
      shown.rows = Math.min(12, text.split('\n').length);
      shown.focus();
      shown.select();
      told.textContent = sentence + ' Copy it from here.';
      Swardbook.copy(text, function () { told.textContent = sentence + ' It is copied.'; }, function () { /* It can be copied by hand. */ });
    }

    function on(part, act) {
      var button = box.querySelector('[data-part=' + part + ']');
      if (button) button.addEventListener('click', act);
    }

    on('copy', function () { offer(asText(form), 'The figures as text.'); });
    on('link', function () {
      var link = linked(form);
      if (link === null) { told.textContent = 'These figures do not fit into a link; copy them as text.'; return; }
      offer(link, root.getAttribute('data-address') ? 'A link that carries these figures.' : 'This link works only where this copy of the book is, because it has no public address.');
    });
    on('print', function () {
      document.documentElement.setAttribute('data-print-card', root.id);
      window.print();
    });
    window.addEventListener('afterprint', function () { document.documentElement.removeAttribute('data-print-card'); });

    function take() {
      var found = particulars(window.location.hash, form.fields.map(function (field) { return field.name; }));
      var sound = found !== null && Object.keys(found).every(function (name) { return form.reads(form.field(name), found[name]); });
      damaged.hidden = sound;
      if (!sound) return;
      Object.keys(found).forEach(function (name) {
        var parts = parted(form.field(name), found[name]);
        form.set(form.field(name), parts.text, parts.unit);
      });
    }

    box.hidden = false;
    if (damaged) {
      window.addEventListener('hashchange', take);
      take();
    }
  };
})();
