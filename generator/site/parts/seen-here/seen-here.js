/* The part of a page in which a reader notes what was seen, and reads what that moves. */
(function () {
  'use strict';
  var add = Swardbook.add, say = Swardbook.say, hide = Swardbook.hide;

  function start(root) {
    var parts = Swardbook.parts(root), N = Swardbook.seenNotes, folder = root.dataset.folder, back = null, wasFor = '', inputs = {};
    ['soil', 'soil_depth', 'soil_on', 'green_up', 'last_frost'].forEach(function (name) { inputs[name] = parts[name]; });

    function today() { return Swardbook.dates.iso(Swardbook.dates.today()); }
    var job = null, follows = root.dataset.follows;
    /* What the page is about: its own place and grass, the job's, the chosen lawn's, or what the reader chose last. */
    function about(name) {
      var lawn = Swardbook.lawns.chosen();
      if (follows === 'job') { return job ? job[name] : ''; }
      if (follows === 'lawn') { return lawn ? lawn[name] : ''; }
      return follows === 'home' && Swardbook.preferences.get(name) || root.dataset[name];
    }
    function at() { return N.keeper(about('place')); }
    function grass() { return about('grass'); }
    function site() { return job ? job.site : (at().lawn || {}).site || Swardbook.preferences.get('site') || 'open'; }

    function told(words, undo) {
      back = undo || null;
      say(parts.told, words);
      if (parts.undo) { hide(parts.undo, !back); }
    }

    function typed() {
      var out = {};
      Object.keys(inputs).forEach(function (name) { if (inputs[name].value.trim()) { out[name] = inputs[name].value.trim(); } });
      if (out.soil) { out.soil = Swardbook.readerUnits.beside(out.soil, Swardbook.readerUnits.of('°C', '°F')); } else { delete out.soil_on; }
      if (out.soil_depth) { out.soil_depth = Swardbook.readerUnits.beside(out.soil_depth, Swardbook.readerUnits.of('mm', 'in')); }
      return out;
    }

    function refuse(found) {
      Object.keys(inputs).forEach(function (name) { Swardbook.markInvalid(inputs[name], Boolean(found) && found[0] === name); });
      say(parts.problem, found ? found[1] : '');
      hide(parts.problem, !found);
      if (found) { inputs[found[0]].focus(); }
    }

    function change(after, words) {
      var here = at(), before = N.of(here);
      N.put(here, after);
      told(words, function () { N.put(here, before); });
    }

    function keep() {
      Swardbook.seen.ready(folder, at().place).then(function () {
        var found = typed(), wrong = N.wrong(found);
        if (!wrong && !Object.keys(found).length) { wrong = ['soil', Swardbook.seenRules.words.refusals['not-a-temperature']]; }
        refuse(wrong);
        if (wrong) { return; }
        change(found, 'Kept on this device' + (at().lawn ? ', with ' + at().lawn.code : '') + '.');
      }).catch(failed);
    }

    function failed() { told('This copy of the book does not have what notes are compared with.'); }

    /* The fields show what is kept, whenever that is another's. */
    function fill(notes) {
      var key = JSON.stringify([at().lawn && at().lawn.id, at().place, notes]);
      if (key === wasFor || !parts.form) { return; }
      wasFor = key;
      Object.keys(inputs).forEach(function (name) { inputs[name].value = notes[name] || (name === 'soil_on' ? today() : ''); });
    }

    function list(notes) {
      if (!parts.list) { return; }
      var names = { soil: 'Soil ' + notes.soil + (notes.soil_depth ? ' at ' + notes.soil_depth : ''), green_up: 'Green-up', last_frost: 'Last frost' };
      parts.list.textContent = '';
      Object.keys(N.FIELDS).filter(function (of) { return notes[of]; }).forEach(function (of) {
        var item = add(parts.list, 'li', 'sb-seen-here__note'), on = notes[of === 'soil' ? 'soil_on' : of];
        Swardbook.asWritten(add(item, 'span', '', names[of]));
        add(item, 'span', '', on ? ', seen on ' + Swardbook.seen.dated(on) + ' ' : ' ');
        var forget = item.appendChild(Swardbook.button('Forget', function () { change(N.without(N.of(at()), of), 'Forgotten.'); parts.told.focus(); }));
        add(forget, 'span', 'sb-hidden', ': ' + names[of]);
      });
      hide(parts['forget-all'], !parts.list.childNodes.length);
    }

    function write(notes) {
      var year = Swardbook.seen.year(at().place, grass(), site(), notes, today()), lines = Swardbook.seen.lines(year, notes), slots = {};
      if (job) { lines.windows = lines.windows.filter(function (window) { return window.kind === job.kind; }); }
      Swardbook.filledBy(parts.lines, function (box) {
        /* A note that moves nothing says why at once: an empty answer would look like none. */
        var said = lines.short.length || lines.windows.length ? lines.short : lines.why.slice(0, 1);
        said.forEach(function (words, number) { add(box, 'p', number ? '' : 'sb-seen-here__first', words); });
        if (!lines.windows.length) { return; }
        var each = add(box, 'ul');
        lines.windows.forEach(function (window) {
          var item = add(each, 'li');
          add(item, 'strong', '', window.label + ':');
          item.appendChild(document.createTextNode(' ' + window.words));
          slots[window.kind] = (slots[window.kind] || []).concat(window.words);
        });
        if (job) { add(box, 'p', '', Swardbook.seen.dayWords(year.every.filter(function (each) { return each.kind === job.kind; }), job.on)); }
      });
      Swardbook.filledBy(parts.why, function (box) { lines.why.concat(lines.how || []).forEach(function (words) { add(box, 'p', '', words); }); });
      hide(parts.reasons, !lines.why.length);
      Swardbook.each(document, '[data-seen-window]', function (slot) {
        var words = slots[slot.dataset.seenWindow];
        say(slot, words ? 'This year, by what you have seen: ' + words.join(' ') : '');
        hide(slot, !words);
      });
    }

    function update() {
      var here = at(), there = Boolean(here.place && grass());
      hide(root, !there);
      if (!there) { return; }
      if (parts.whose) { say(parts.whose, here.lawn ? 'Kept with lawn ' + here.lawn.code + ', on this device.' : 'Kept for this place, on this device.'); }
      var kept = N.of(here);
      fill(kept);
      if (!Object.keys(kept).length) {
        [parts.lines, parts.why, parts.list].filter(Boolean).forEach(function (part) { part.textContent = ''; });
        [parts.reasons, parts['forget-all']].filter(Boolean).forEach(function (part) { hide(part, true); });
        Swardbook.each(document, '[data-seen-window]', function (slot) { say(slot, ''); hide(slot, true); });
        return;
      }
      Swardbook.seen.ready(folder, here.place).then(function () {
        if (!Swardbook.seen.knows(here.place, grass())) { failed(); return; }
        list(kept);
        write(N.sound(kept));
      }).catch(failed);
    }

    if (parts.form) { /* A job's page shows what is kept, and leads to where it is written. */
      parts.form.addEventListener('submit', function (event) { event.preventDefault(); keep(); });
      parts['forget-all'].addEventListener('click', function () { change({}, 'All of it is forgotten.'); parts.told.focus(); });
      parts.undo.addEventListener('click', function () { if (back) { back(); told('It is back.'); } });
    }
    Swardbook.kept('seen').follow(update);
    Swardbook.lawns.follow(update);
    document.addEventListener('swardbook:job-shown', function (event) { if (follows === 'job') { job = event.detail; update(); } });
    ['units', 'site', 'grass', 'place'].forEach(function (name) { document.addEventListener('swardbook:' + name, update); });
    document.addEventListener('change', function (event) { if (event.target.name === 'site') { update(); } });
    update();
  }

  Swardbook.component('seen-here', start);
})();
