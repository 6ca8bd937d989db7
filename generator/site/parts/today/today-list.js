/* What falls on a day, of every job; and the lines that say so. */
(function () {
  'use strict';
  var SOON_DAYS = 7, BOOK_AHEAD_DAYS = 14, FEW = 4, add = Swardbook.add;

  function later(iso, days) { return Swardbook.dates.iso(Swardbook.dates.fromIso(iso) + days); }
  /* By day, then by lawn; what a job has on one day stays in the order of its work. Only a nought for equals gives one order in every browser. */
  function compared(one, other) { return one < other ? -1 : one > other ? 1 : 0; }
  function inOrder(one, other) { return compared(one.on, other.on) || compared(one.job.lawn.code, other.job.lawn.code); }

  /* Visits of a lawn's year that are still to be done: lines {job: {lawn}, visit, id, on}. */
  function visitLines(lawn) {
    var visits = lawn.programme && lawn.programme.visits || {};
    return Object.keys(visits).filter(function (id) { return !visits[id].done && !visits[id].skipped; })
      .map(function (id) { return { job: { lawn: lawn }, visit: visits[id], id: id, on: visits[id].put || visits[id].on }; });
  }

  /* The tasks of a line that the day may hold. */
  Swardbook.todayTasks = function (line) { return line.visit ? line.visit.tasks || [] : line.step.task ? [line.step.task] : []; };

  /* jobs: [{lawn, job, out}]; lawns: whose years have visits. Gives {late, due, soon}: lines {job, step, on} or {job, visit, on}, and book: {job,
     what, on, late}. A step that is only a wait, or is done, or is not chosen, is no work. */
  Swardbook.todayLists = function (jobs, lawns, today) {
    var lists = { late: [], due: [], soon: [], book: [] };
    lawns.forEach(function (lawn) {
      visitLines(lawn).forEach(function (line) {
        var name = line.on < today ? 'late' : line.on === today ? 'due' : line.on <= later(today, SOON_DAYS) ? 'soon' : null;
        if (name) { lists[name].push(line); }
      });
    });
    jobs.forEach(function (job) {
      job.out.steps.forEach(function (step) {
        var last = step.until || step.date;
        if (job.job.done[step.id] || step.counted === false) { return; }
        var line = { job: job, step: step, on: step.date };
        if (last < today) { lists.late.push(line); }
        else if (step.date <= today) { lists.due.push(line); }
        else if (step.date <= later(today, SOON_DAYS)) { lists.soon.push(line); }
      });
      job.out.gear.forEach(function (thing) {
        [[thing.book_by, 'book ' + thing.name + (thing.from ? ', from ' + thing.from : '')], [thing.check ? thing.check_by : null, 'check ' + thing.name + ': ' + thing.check]].forEach(function (each) {
          if (each[0] && thing.needed >= today && each[0] <= later(today, BOOK_AHEAD_DAYS)) { lists.book.push({ job: job, what: each[1], on: each[0], late: each[0] < today }); }
        });
      });
    });
    Object.keys(lists).forEach(function (name) { lists[name].sort(inOrder); });
    return lists;
  };

  function answerOf(line, today) {
    var step = line.step;
    if (!step.task || !Swardbook.holdOrGo) { return null; }
    return Swardbook.holdOrGo.answer(step.task, today, Swardbook.jobHold.known(line.job.out, step, today, line.job.job));
  }

  function link(parent, line, words, page) {
    var made = add(parent, 'a', 'sb-today__step', words);
    made.href = page + (line.step ? '#job-step-' + line.step.id : '#gear');
    made.addEventListener('click', function () {
      Swardbook.preferences.set('job', line.job.id);
      Swardbook.lawns.choose(line.job.lawn.id);
    });
  }

  function head(item, line) { Swardbook.asWritten(add(item, 'strong', 'sb-today__code', line.job.lawn.code)); item.appendChild(document.createTextNode(' ')); }

  /* name: of a task, where a line has several. */
  function answer(item, found, name) {
    if (!found) { return; }
    var said = add(item, 'p', 'sb-today__answer sb-today__answer--' + found.answer);
    if (name) { said.appendChild(document.createTextNode(name + ': ')); }
    add(said, 'strong', '', found.words);
    said.appendChild(document.createTextNode(found.names.length ? ': ' + found.names.join(', ').toLowerCase() + '.' : '.'));
    if (found.again) { add(said, 'span', 'sb-today__again', ' Ask again ' + found.again + '.'); }
  }

  function visitLine(line, at, withAnswer) {
    var item = Swardbook.element('li', 'sb-today__line'), tasks = Swardbook.todayTasks(line), grass = Swardbook.holdRules && Swardbook.own(Swardbook.holdRules.grasses, line.job.lawn.grass) ? Swardbook.holdRules.grasses[line.job.lawn.grass] : null;
    function name(task) { return Swardbook.own(at.tasks, task) ? at.tasks[task] : task; }
    head(item, line);
    var made = add(item, 'a', 'sb-today__step', line.visit.plan ? 'The job of its own in this year' : 'Visit: ' + tasks.map(name).join(', '));
    made.href = at.programmePage;
    made.addEventListener('click', function () { Swardbook.lawns.choose(line.job.lawn.id); });
    add(item, 'span', 'sb-note', ' ' + Swardbook.dates.words(Swardbook.dates.fromIso(line.on)));
    if (!withAnswer || !Swardbook.holdOrGo) { return item; }
    tasks.filter(function (task) { return Swardbook.holds.of(task).length; }).forEach(function (task) {
      answer(item, Swardbook.holdOrGo.answer(task, at.today, Object.assign({ days_since_cut_down: 'none', depth_due: '0 mm' }, grass ? grass.known : {})), name(task));
    });
    return item;
  }

  function stepLine(line, at, withAnswer) {
    if (line.visit) { return visitLine(line, at, withAnswer); }
    var item = Swardbook.element('li', 'sb-today__line');
    head(item, line);
    link(item, line, line.step.title, at.jobPage);
    add(item, 'span', 'sb-note', ' ' + Swardbook.jobWords.dates(line.step));
    answer(item, withAnswer ? answerOf(line, at.today) : null);
    return item;
  }

  function bookLine(line, at) {
    var item = Swardbook.element('li', 'sb-today__line');
    head(item, line);
    link(item, line, Swardbook.capital(line.what), at.jobPage);
    add(item, 'span', 'sb-note', ' by ' + Swardbook.jobWords.day(line.on));
    if (line.late) { add(item, 'strong', 'sb-today__late', ' overdue'); }
    return item;
  }

  /* The first few, and the rest folded: what is long overdue would hide what is due. */
  function list(box, body, lines, write) {
    var fold = body.querySelector('details'), wasOpen = Boolean(fold) && fold.open;
    box.hidden = !lines.length;
    body.textContent = '';
    lines.slice(0, FEW).forEach(function (line) { body.appendChild(write(line)); });
    if (lines.length <= FEW) { return; }
    var more = add(add(body, 'li', 'sb-today__more'), 'details');
    add(more, 'summary', '', (lines.length - FEW) + ' more');
    var rest = add(more, 'ul', 'sb-today__list');
    more.open = wasOpen;
    lines.slice(FEW).forEach(function (line) { rest.appendChild(write(line)); });
  }

  /* at: {jobPage, programmePage, tasks: names by id, today}. */
  Swardbook.todayWrite = function (parts, lists, at) {
    list(parts.late, parts['late-list'], lists.late, function (line) { return stepLine(line, at, true); });
    list(parts.due, parts['due-list'], lists.due, function (line) { return stepLine(line, at, true); });
    list(parts.soon, parts['soon-list'], lists.soon, function (line) { return stepLine(line, at, false); });
    list(parts.book, parts['book-list'], lists.book, function (line) { return bookLine(line, at); });
    parts.nothing.hidden = lists.late.length + lists.due.length > 0;
  };

  /* The lawns that no job is planned for. data: addresses. */
  Swardbook.todayWithout = function (box, lawns, jobs, data) {
    var bare = lawns.filter(function (lawn) { return !lawn.programme && !jobs.some(function (each) { return each.lawn.id === lawn.id; }); });
    box.hidden = !bare.length;
    box.textContent = bare.length ? 'No job is planned for ' : '';
    bare.forEach(function (lawn, at) {
      var made = add(box, 'a', '', lawn.code);
      made.href = data.jobPage;
      made.addEventListener('click', function () { Swardbook.lawns.choose(lawn.id); });
      box.appendChild(document.createTextNode(at < bare.length - 1 ? ', ' : '.'));
    });
  };
})();
