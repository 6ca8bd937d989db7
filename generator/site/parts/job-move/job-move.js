/* Another day for a whole job: shown in full before anything moves, and undone with one button. What is done and no longer holds by the
   new day is done again; what is booked is booked for another day. */
(function () {
  'use strict';
  var FROM = { hire: 'Where you hire', borrow: 'Who lends it', buy: 'Where you buy' }, MOST_AHEAD = 800;
  var tools = null, moved = null, undone = null, opener = null;

  function W() { return Swardbook.jobWords; }
  function number(iso) { return Swardbook.dates.fromIso(iso); }
  function part(name) { return tools.part('move-' + name); }
  function button(name) { return tools.root.querySelector('[data-act=move-' + name + ']'); }
  function copy(job) { return Swardbook.shape.copy(job); }

  /* The next day in the window on which every booking can still be made in time. */
  function suggested(job, out, plan) {
    var today = Swardbook.dates.today(), on = number(job.on), data = Swardbook.jobs.held(job.plan, job.grass, job.place, job.site);
    var late = out.gear.filter(function (each) { return each.book_by && !each.steps.every(function (id) { return job.done[id]; }); })
      .map(function (each) { return today - number(each.book_by); });
    var first = Math.max(on + 1, today, on + Math.max.apply(null, late.concat(0))), found = data.site.windows[data.plan.window].stretches;
    for (var day = first; found.length && day < first + MOST_AHEAD; day += 1) { if (Swardbook.jobDates.windowAt(found, day)) { return day; } }
    return first;
  }

  /* Steps that are done, and so long before the new day that what they did no longer holds: [{step, done, lasts}]. */
  function again(job, plan, day) {
    var lasts = Swardbook.jobs.moving().lasts[job.plan] || {};
    return plan.kept.filter(function (step) {
      return step.stage !== 'after' && job.done[step.id] && Swardbook.own(lasts, step.id) && day - number(job.done[step.id]) > lasts[step.id].days;
    }).map(function (step) { return { step: step, done: job.done[step.id], lasts: lasts[step.id] }; });
  }

  /* Everything that another day changes; nothing is changed by it. */
  function moving(job, before, iso) {
    var then = copy(job), repeated = again(job, before.plan, number(iso)), needed = {};
    then.on = iso;
    then.put = {};
    repeated.forEach(function (each) { delete then.done[each.step.id]; });
    var after = tools.worked(then);
    before.out.gear.forEach(function (each) { needed[each.name] = each.needed; });
    var booked = after.out.gear.filter(function (each) { return each.book_by && needed[each.name] !== each.needed && !each.steps.every(function (id) { return then.done[id]; }); });
    /* What was booked is booked no more. */
    var anew = before.plan.kept.filter(function (step) { return booked.length && step.books && then.done[step.id]; });
    anew.forEach(function (step) { delete then.done[step.id]; });
    if (anew.length) { after = tools.worked(then); }
    return { then: then, after: after, again: repeated, anew: anew, booked: booked, was: needed, steps: Swardbook.jobTick.moved(before.out, after.out, null) };
  }

  function againWords(each) {
    var why = [each.lasts.source, each.lasts.note].filter(Boolean).join('. ').replace(/\.$/, '');
    return each.step.title + ': done on ' + W().day(each.done) + ', and that holds for ' + W().count(each.lasts.days, 'day') + (why ? ' (' + why + ')' : '') + '.';
  }

  function bookWords(found, each) {
    var late = each.book_by < Swardbook.dates.iso(Swardbook.dates.today());
    return each.name + ' (' + each.from + '): not ' + W().day(found.was[each.name]) + ' but ' + W().day(each.needed) + '. Book by ' +
      (late ? W().said('overdue', { day: W().day(each.book_by) }) : W().day(each.book_by) + '.');
  }

  /* Who has to hear of it: where things come from, whoever is licensed for a step that moves, and the client. */
  function ringWords(job, found) {
    var experts = Swardbook.jobs.moving().experts, rows = [], dates = {};
    found.steps.forEach(function (each) { dates[each.id] = each.to; });
    Object.keys(FROM).forEach(function (from) {
      var names = found.booked.filter(function (each) { return each.from === from; }).map(function (each) { return each.name; });
      if (names.length) { rows.push(FROM[from] + ': ' + names.join(', ') + '.'); }
    });
    var moves = found.after.out.steps.filter(function (step) { return dates[step.id] && !found.then.done[step.id] && step.counted; });
    /* What is arranged, not done by our own hands on every lawn. */
    var arranged = moves.filter(function (step) { return step.who === 'office' || step.only_where; });
    Object.keys(experts).forEach(function (name) {
      var theirs = arranged.filter(function (step) { return experts[name].every(function (caution) { return step.cautions.indexOf(caution) >= 0; }); });
      if (theirs.length) { rows.push(name + ': ' + theirs.map(dated).join('; ') + '.'); }
    });
    var clients = moves.filter(function (step) { return step.who === 'client'; });
    rows.push((job.name ? 'The client, ' + job.name : 'The client') + ': the new day' + (clients.length ? ', and what they do themselves. ' + clients.map(dated).join('; ') : '') + '.');
    return rows;
  }

  function dated(step) { return step.title + ', ' + W().day(step.date); }

  /* As the page that makes a client's link writes it; nothing in a book without a public address, or for a plan without a sheet. */
  function message(found) {
    var words = Swardbook.jobs.moving(), sheet = tools.book.plans[found.then.plan].aftercare;
    if (!words.address || !sheet) { return ''; }
    var link = words.address + sheet.id + '.html#' + Swardbook.jobLists.clientLink(found.after.out, found.then, null, found.after.measured);
    return words.messages[sheet.id].replace('{day}', Swardbook.dates.words(number(Swardbook.jobLists.finished(found.after.out)))).replace('{link}', link) + '\n' + words.signature;
  }

  function list(name, rows, late) {
    Swardbook.jobSteps.list(part(name), rows, function (row, text, at) { row.textContent = text; });
    Swardbook.list(part(name).children).forEach(function (row, at) { row.classList.toggle('sb-job-move__late', Boolean(late && late[at])); });
    if (part(name + '-box')) { part(name + '-box').hidden = !rows.length; }
  }

  function show() {
    var job = tools.desk.now, field = part('on'), today = Swardbook.dates.iso(Swardbook.dates.today());
    moved = Swardbook.kept.isDay(field.value) && field.value !== job.on ? moving(job, tools.last(), field.value) : null;
    button('do').disabled = !moved;
    part('so').textContent = moved ? W().headline(moved.after.out.window) + ' ' + W().edges(moved.after.out.window) : 'Choose another day than ' + W().day(job.on) + '.';
    var steps = moved ? moved.steps : [];
    part('count').textContent = W().count(steps.length, 'step') + (steps.length === 1 ? ' moves' : ' move');
    list('steps', steps.map(function (each) { return each.title + ': ' + W().day(each.from) + ' → ' + W().day(each.to); }));
    list('again', moved ? moved.again.map(againWords) : []);
    list('book', moved ? moved.booked.map(function (each) { return bookWords(moved, each); }) : [], moved && moved.booked.map(function (each) { return each.book_by < today; }));
    list('ring', moved ? ringWords(job, moved) : []);
    part('message').value = moved ? message(moved) : '';
    part('message-box').hidden = !part('message').value;
  }

  function close() {
    part('box').hidden = true;
    moved = null;
  }

  function say(sentence) {
    part('told').textContent = sentence;
    part('told').hidden = !sentence;
  }

  /* What the move took away comes back, and what was ticked since stays. */
  function apply() {
    var desk = tools.desk, now = desk.now, from = now.on, lost = moved.again.map(function (each) { return each.step; }).concat(moved.anew), message = part('message').value;
    undone = { id: null, on: from, put: copy(now.put), done: {} };
    lost.forEach(function (step) {
      undone.done[step.id] = now.done[step.id];
      delete now.done[step.id];
    });
    now.on = moved.then.on;
    now.put = {};
    desk.dayOpen = false;
    close();
    tools.changed();
    undone.id = desk.id;
    say('Moved from ' + W().day(from) + ' to ' + W().day(now.on) + '.' + (message ? ' Send the client the new message; their old link still names the old day. The part “Client” makes it again.' : ''));
    button('undo').hidden = false;
    button('undo').focus();
  }

  function undo() {
    var now = tools.desk.now;
    button('undo').hidden = true;
    if (!undone || undone.id !== tools.desk.id) { say(''); return; }
    now.on = undone.on;
    now.put = undone.put;
    Object.keys(undone.done).forEach(function (id) { if (!now.done[id]) { now.done[id] = undone.done[id]; } });
    undone = null;
    tools.changed();
    say('The job is back on ' + W().day(now.on) + '.');
    tools.root.querySelector('[data-part=move-ways] [data-act=move]').focus();
  }

  function start() {
    part('on').addEventListener('change', show);
    part('on').addEventListener('input', show);
    button('do').addEventListener('click', apply);
    button('leave').addEventListener('click', function () { close(); opener.focus(); });
    button('undo').addEventListener('click', undo);
    button('copy').addEventListener('click', function () {
      var field = part('message');
      Swardbook.copy(field.value, function () { button('copy').textContent = 'Copied'; }, function () { field.select(); });
    });
  }

  /* given: of the planner, {root, part, desk, last, worked, changed, book}. */
  function open(given) {
    var first = !tools, last = given.last();
    tools = given;
    if (!last) { return; }
    if (first) { start(); }
    opener = tools.root.querySelector('[data-part=move-ways] [data-act=move]');
    button('copy').textContent = 'Copy the message';
    say('');
    part('on').value = Swardbook.dates.iso(suggested(tools.desk.now, last.out, last.plan));
    part('box').hidden = false;
    show();
    var title = part('box').querySelector('h3');
    title.scrollIntoView();
    title.focus({ preventScroll: true });
  }

  Swardbook.jobMove = { open: open };
})();
