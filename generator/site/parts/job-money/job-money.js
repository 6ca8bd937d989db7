/* From the quote of a job to what is paid for it. Every state is a line with what leads to the next, and can be undone. What is quoted is
   frozen; a job that changed afterwards is told, and never changes what the client was offered. Sums: money-sums.js. */
(function () {
  'use strict';
  var LEAST = 'Up to the minimum charge', LONGEST = Swardbook.contract.kept.longest, NEXT = 'invoice-number', COUNT = /^\d{1,9}$/, WRONG = 'Type an amount such as 246.90.';
  var tools = null, opened = null, shown = null, shownFor = null;

  function W() { return Swardbook.jobWords; }
  function M() { return Swardbook.moneySums; }
  function cash(cents) { return W().money(cents / 100); }
  function part(name) { return tools.part('money-' + name); }
  function button(name) { return tools.root.querySelector('[data-act=money-' + name + ']'); }
  function job() { return tools.desk.now; }
  function money() { return job().money || {}; }
  function today() { return Swardbook.dates.iso(Swardbook.dates.today()); }
  function day(name) { var value = part(name).value; return Swardbook.kept.isDay(value) ? value : null; }

  function say(sentence, focus) {
    part('told').textContent = sentence;
    part('told').hidden = !sentence;
    if (focus && sentence) { part('told').focus({ preventScroll: true }); }
  }

  /* A change by hand, kept; what is left empty goes. */
  function change(act, sentence) {
    var now = Swardbook.shape.copy(money());
    act(now);
    Object.keys(now).forEach(function (name) { if (now[name] === undefined || JSON.stringify(now[name]) === '{}') { delete now[name]; } });
    if (Object.keys(now).length) { job().money = now; } else { delete job().money; }
    tools.changed();
    say(sentence || '', true);
  }

  function put(now, name, id, value) {
    now[name] = now[name] || {};
    if (value === undefined) { delete now[name][id]; } else { now[name][id] = value; }
  }

  function lastNumber(record) { return M().values(record).reduce(function (most, each) { return Math.max(most, each.number); }, 0); }
  function deposit() { return M().inOrder(money().payments, 'on').filter(function (each) { return each[1].deposit; })[0] || null; }
  function current() { return M().priced(job(), tools.last().out, tools.last().plan, LEAST); }

  /* --- numbers of invoices, counted on this device --- */
  function prefix() { return Swardbook.jobs.money().invoice.prefix; }
  function counted(number) {
    var rest = number.slice(prefix().length);
    return number.slice(0, prefix().length) === prefix() && COUNT.test(rest) ? +rest : 0;
  }
  function others() {
    return tools.desk.rows.all().filter(function (each) { return each.id !== tools.desk.id && each.row.money && each.row.money.invoice; })
      .map(function (each) { return each.row.money.invoice.number; });
  }
  function nextNumber() {
    var kept = Swardbook.preferences.get(NEXT);
    return prefix() + others().reduce(function (most, each) { return Math.max(most, counted(each) + 1); }, COUNT.test(kept || '') ? Math.max(1, +kept) : 1);
  }

  /* --- from state to state --- */
  function quote() {
    var now = current(), on = today(), valid = Swardbook.jobs.money().valid_days, before = M().latest(money())[1];
    if (!now) { return; }
    if (valid) { now.until = Swardbook.dates.iso(Swardbook.dates.fromIso(on) + valid); }
    Object.assign(now, { number: lastNumber(money().quotes) + 1, on: on });
    change(function (kept) { put(kept, 'quotes', Swardbook.rows.random(), now); },
      before && before.accepted ? 'Quoted again. The client has to accept this one; variations that were agreed stay owed beside it.' : 'Quoted. Send the letter, or print it.');
    open('letter');
  }

  function accept(on) {
    var id = M().latest(money())[0];
    change(function (now) { if (on) { now.quotes[id].accepted = on; } else { delete now.quotes[id].accepted; } }, on ? 'Accepted.' : 'Not accepted any more.');
  }

  function pay(name, isDeposit) {
    var amount = M().typed(part(name + '-amount').value), on = day(name + '-on'), row = { number: lastNumber(money().payments) + 1, on: on, amount: amount };
    if (!amount || amount < 0) { say(WRONG, true); return; }
    if (!on) { say('Say on which day it was paid.', true); return; }
    if (isDeposit) { row.deposit = true; }
    change(function (now) { put(now, 'payments', Swardbook.rows.random(), row); }, 'Paid: ' + cash(amount) + '.');
  }

  function invoice() {
    var number = part('invoice-number').value.trim(), on = day('invoice-on');
    if (!number) { say('An invoice needs a number.', true); return; }
    if (!on) { say('Say which day the invoice is of.', true); return; }
    if (others().indexOf(number) >= 0) { say(number + ' is the number of another job’s invoice.', true); return; }
    var due = Swardbook.dates.iso(Swardbook.dates.fromIso(on) + Swardbook.jobs.money().invoice.pays_within_days);
    if (counted(number)) { Swardbook.preferences.set(NEXT, counted(number) + 1); }
    change(function (now) { now.invoice = Object.assign({ number: number, on: on }, Swardbook.kept.isDay(due) ? { due: due } : {}); }, 'Invoice ' + number + ' is written.');
    open('invoice');
  }

  function takeInvoiceBack() {
    var number = money().invoice.number;
    if (counted(number) && Swardbook.preferences.get(NEXT) === String(counted(number) + 1)) { Swardbook.preferences.set(NEXT, counted(number)); }
    change(function (now) { delete now.invoice; }, 'Invoice ' + number + ' is taken back. If the client has it already, tell them.');
  }

  function addVariation() {
    var what = part('variation-what').value.trim(), why = part('variation-why').value.trim(), amount = M().typed(part('variation-amount').value);
    if (!what) { say('Say what was found or asked for.', true); return; }
    if (!amount) { say(WRONG + ' With a minus, it costs less.', true); return; }
    var each = { number: lastNumber(money().variations) + 1, on: today(), what: what.slice(0, LONGEST.entry), amount: amount, tax: M().taxOf(amount, M().latest(money())[1]) };
    if (why) { each.why = why.slice(0, LONGEST.entry); }
    ['what', 'why', 'amount'].forEach(function (name) { part('variation-' + name).value = ''; });
    change(function (now) { put(now, 'variations', Swardbook.rows.random(), each); }, 'Variation ' + each.number + ' is written. It is owed once the client has agreed.');
  }

  function offerVariation(what, amount) {
    part('variations-box').open = true;
    part('variation-what').value = what;
    part('variation-amount').value = amount === null ? '' : cash(amount);
    part('variation-what').focus();
  }

  var ACTS = {
    quote: quote, 'quote-show': function () { open('letter'); },
    'quote-undo': function () { var id = M().latest(money())[0]; change(function (now) { put(now, 'quotes', id, undefined); }, 'The quote is taken back.'); },
    accepted: function () { if (day('accepted-on')) { accept(day('accepted-on')); } else { say('Say on which day it was accepted.', true); } },
    'accepted-undo': function () { accept(null); },
    deposit: function () { pay('deposit', true); },
    'deposit-undo': function () { var id = deposit()[0]; change(function (now) { put(now, 'payments', id, undefined); }, 'The deposit is taken off.'); },
    done: function () { var on = day('done-on'); if (on) { change(function (now) { now.done = on; }, 'Done.'); } else { say('Say on which day it was done.', true); } },
    'done-undo': function () { change(function (now) { delete now.done; }, 'Not done any more.'); },
    invoice: invoice, 'invoice-show': function () { open('invoice'); }, 'invoice-undo': takeInvoiceBack,
    paid: function () { pay('paid', false); }, variation: addVariation,
    print: function () { Swardbook.jobPrint.print('money'); },
    copy: function () {
      var field = part('text');
      Swardbook.copy(field.value, function () { button('copy').textContent = 'Copied'; }, function () { field.hidden = false; field.select(); });
    },
    close: function () { opened = null; sheet(); part('told').focus(); }
  };

  /* --- the sheet for the client --- */
  function made() {
    var kept = money(), latest = M().latest(kept)[1], P = Swardbook.moneyPapers;
    if (!opened || !latest || opened.job !== tools.desk.id) { return null; }
    if (opened.kind === 'letter') { return P.letter(job(), latest); }
    if (opened.kind === 'invoice') { return kept.invoice ? P.invoice(job(), latest) : null; }
    return Swardbook.own(kept.variations, opened.id) ? P.variation(job(), latest, opened.id) : null;
  }

  function sheet() {
    shown = made();
    part('sheet').hidden = !shown;
    if (!shown) { opened = null; return; }
    var P = Swardbook.moneyPapers, text = P.text(shown);
    P.show(part('paper'), shown);
    part('text').value = text;
    button('copy').textContent = 'Copy as text';
    part('message').href = 'sms:?&body=' + encodeURIComponent(text);
    part('mail').href = 'mailto:?subject=' + encodeURIComponent(shown.title) + '&body=' + encodeURIComponent(text.replace(/\n/g, '\r\n'));
  }

  function open(kind, id) {
    opened = { kind: kind, id: id, job: tools.desk.id };
    part('text').hidden = true;
    sheet();
    part('sheet').focus({ preventScroll: true });
    part('sheet').scrollIntoView();
  }

  /* --- what stands on the page --- */
  function state(name, said, asks, undoes, shows) {
    Swardbook.say(part(name + '-said'), said);
    Swardbook.hide(part(name + '-ask'), !asks);
    Swardbook.hide(button(name + '-undo'), !undoes);
    Swardbook.hide(button(name + '-show'), !shows);
  }

  /* What a field starts with, until the reader types: set anew only where that changes. */
  function starts(name, value) {
    Swardbook.jobSteps.anew(part(name), [tools.desk.id, value], function () { part(name).value = value; });
  }

  /* The day on which the last of the day's own work was ticked, and how much of it is. */
  function ticks(out) {
    var own = out.steps.filter(function (step) { return step.stage === 'day' && step.who === 'hands' && step.counted; });
    var days = own.map(function (step) { return job().done[step.id]; }).filter(Boolean).sort();
    return { of: own.length, done: days.length, last: days.length === own.length && days.length ? days[days.length - 1] : null };
  }

  function owedWords(kept, latest, sums) {
    if (!sums) { return ['Nothing is quoted yet.', '']; }
    var due = kept.invoice && kept.invoice.due, owed = sums.owed;
    var first = owed < 0 ? 'Overpaid: ' + cash(-owed) + ' ' + latest.currency + '. Pay it back, or agree what it is for.' : !owed ? 'Nothing is owed.'
      : 'Owed: ' + cash(owed) + ' ' + latest.currency + (latest.accepted ? due ? (due < today() ? '. Overdue since ' : ', by ') + W().day(due) : '' : ', once the quote is accepted') + '.';
    return [first, 'Quoted ' + cash(sums.quoted) + ', variations ' + cash(sums.varied) + ', paid ' + cash(sums.paid) + '.'];
  }

  function quoteWords(latest, now) {
    if (!latest) { return 'not written yet'; }
    var said = W().day(latest.on) + ': ' + cash(latest.total) + ' ' + latest.currency + (latest.until ? ', open until ' + W().day(latest.until) : '') + '.', more = now ? now.total - latest.total : 0;
    if (!now || M().same(latest, now)) { return said; }
    return said + ' The job has changed since: it now comes to ' + cash(now.total) + ', ' + (more ? cash(Math.abs(more)) + (more > 0 ? ' more' : ' less') + ' than quoted.' : 'the same sum by other lines.');
  }

  function list(kept, latest, locked) {
    Swardbook.jobSteps.list(part('payments'), M().inOrder(kept.payments, 'on').filter(function (each) { return !each[1].deposit; }), function (row, each) {
      row.textContent = W().day(each[1].on) + ': ' + cash(each[1].amount) + ' ';
      row.appendChild(Swardbook.button('Take it off', function () { change(function (now) { put(now, 'payments', each[0], undefined); }, 'The payment is taken off.'); }));
    });
    Swardbook.jobSteps.list(part('variations'), M().inOrder(kept.variations, 'number'), function (row, pair) {
      var each = pair[1], id = pair[0], agreed = each.agreed;
      function labelled(made) { made.setAttribute('aria-label', made.textContent + ': variation ' + each.number); return made; }
      function set(value, said) { return function () { change(function (now) { put(now, 'variations', id, value); }, 'Variation ' + each.number + ' is ' + said + '.'); }; }
      Swardbook.add(row, 'span', '', each.number + '. ' + each.what + (each.why ? ': ' + each.why : '') + '. ').setAttribute('data-as-written', '');
      Swardbook.add(row, 'strong', '', cash(latest ? M().whole(each, latest) : each.amount));
      Swardbook.add(row, 'span', '', ' with tax, ' + (agreed ? 'agreed on ' + W().day(agreed) + '. ' : 'not agreed yet. '));
      if (latest) { row.appendChild(labelled(Swardbook.button('Show it', function () { open('variation', id); }))); }
      if (locked) { return; }
      row.appendChild(document.createTextNode(' '));
      var then = Object.assign({}, each, { agreed: today() }), open_ = Object.assign({}, each);
      delete open_.agreed;
      row.appendChild(labelled(Swardbook.button(agreed ? 'Not agreed' : 'The client agreed', agreed ? set(open_, 'not agreed') : set(then, 'agreed'))));
      if (!agreed) { row.appendChild(document.createTextNode(' ')); row.appendChild(labelled(Swardbook.button('Take it off', set(undefined, 'taken off')))); }
    });
  }

  function write() {
    var kept = money(), out = tools.last().out, now = current(), latest = M().latest(kept)[1], sums = M().sums(kept), given = deposit(), ticked = ticks(out);
    var locked = Boolean(kept.invoice), accepted = Boolean(latest && latest.accepted), changed = Boolean(latest && now && !M().same(latest, now)), words = owedWords(kept, latest, sums);
    Swardbook.hide(part('box'), !now && !latest);
    Swardbook.say(part('owed'), words[0]);
    Swardbook.say(part('sums'), words[1]);
    state('quote', quoteWords(latest, now) + (changed && locked ? ' It is invoiced as quoted; take the invoice back to quote again.' : ''), now && !locked && (!latest || changed),
      latest && !accepted && !given && !locked && !M().values(kept.variations).length, latest);
    Swardbook.say(button('quote'), latest ? 'Write a new quote' : 'Write the quote');
    state('accepted', accepted ? W().day(latest.accepted) : 'not yet', latest && !accepted, accepted && !locked, false);
    state('deposit', given ? W().day(given[1].on) + ': ' + cash(given[1].amount) : latest && latest.deposit ? 'not paid, ' + cash(latest.deposit) + ' asked for' : 'none asked for',
      accepted && !given && latest.deposit > 0, given, false);
    state('done', kept.done ? W().day(kept.done) : ticked.last ? 'all of the day’s steps are ticked' : ticked.done + ' of ' + ticked.of + ' steps of the day ticked', accepted && !kept.done, kept.done, false);
    state('invoice', kept.invoice ? kept.invoice.number + ', ' + W().day(kept.invoice.on) : 'not written yet', accepted && !locked, locked, locked && latest);
    part('invoice-said').setAttribute('data-as-written', '');
    state('paid', sums && accepted && sums.owed <= 0 ? 'all paid' : '', accepted, false, false);
    starts('accepted-on', today());
    starts('deposit-on', today());
    starts('deposit-amount', latest ? cash(latest.deposit) : '');
    starts('done-on', ticked.last || today());
    starts('invoice-number', locked ? kept.invoice.number : nextNumber());
    starts('invoice-on', today());
    starts('paid-on', today());
    starts('paid-amount', sums && sums.owed > 0 ? cash(sums.owed) : '');
    ['used-box', 'variations-box'].forEach(function (name) { Swardbook.hide(part(name), !latest); });
    Swardbook.hide(part('variation-ask'), !now || locked);
    Swardbook.say(part('variation-label'), !latest || latest.inside ? 'Amount, with tax' : 'Amount, before tax');
    list(kept, latest, locked);
    if (latest) { Swardbook.moneyUsed.show(part('used'), job(), latest, out, locked || !now, offerVariation); }
    sheet();
  }

  function start() {
    tools.root.addEventListener('click', function (event) {
      var target = event.target.closest('button[data-act^=money-]');
      if (target) { ACTS[target.dataset.act.slice('money-'.length)](); }
    });
    part('used').addEventListener('change', function (event) {
      var field = event.target, good = true;
      change(function (now) { good = Swardbook.moneyUsed.take(now, field.dataset.used, field.value); }, '');
      if (field.isConnected) { Swardbook.markInvalid(field, !good); }
      if (!good) { say(field.dataset.used ? 'Type how many packs, such as 3.' : 'Type the hours with their unit, such as 6.5 h or 390 min.'); }
    });
    Swardbook.jobs.money().unforeseen.forEach(function (each) { Swardbook.add(part('unforeseen'), 'option').value = each; });
    part('variation-what').setAttribute('list', part('unforeseen').id);
    Swardbook.share(button('share'), function () { return shown && { title: shown.title, text: part('text').value }; });
  }

  /* given: the planner's tools. */
  function show(given) {
    var first = !tools, other = tools && shownFor !== given.desk.id;
    tools = given;
    if (first) { start(); }
    if (other) { say(''); }
    shownFor = given.desk.id;
    write();
  }

  Swardbook.jobMoney = { show: show };
})();
