/* What the client gets of a job's money: the letter of a quote, a variation to sign, an invoice. Each is {title, blocks}; a block is
   {heading}, {text, written: what the reader typed is in it}, {rows, head, strong: how many at the end count most} or {blank: to write on}.
   From one such sheet come the page, the paper and the text of a message. */
(function () {
  'use strict';

  function W() { return Swardbook.jobWords; }
  function terms() { return Swardbook.jobs.money(); }
  function money(cents) { return W().money(cents / 100); }
  function inReadersUnits(pair) { return Swardbook.readerUnits.us() && pair[1] || pair[0]; }
  function area(m2) { return inReadersUnits(W().area(m2)); }
  function lines(list) { return list.filter(Boolean).join('\n'); }

  function signed() { return [{ text: 'Name, date and signature:' }, { blank: true }]; }
  function invented() { return terms().invented ? [{ text: terms().invented }] : []; }
  function client(job) { return job.name || 'no code yet'; }

  /* The lines of a quote with what they come to. */
  function priceRows(quote) {
    var rows = Swardbook.moneySums.values(quote.lines).map(function (each) { return [each.name, money(each.amount)]; });
    if (!quote.inside) { rows.push(['Before tax', money(quote.before_tax)]); }
    rows.push([terms().tax + (quote.inside ? ', in these amounts' : ''), money(quote.tax)]);
    rows.push(['To pay, ' + quote.currency, money(quote.total)]);
    return { rows: rows, strong: 1 };
  }

  /* The estimate's own pieces, with the job in their places. */
  function letter(job, quote) {
    var places = {
      client: client(job), date: W().day(quote.on), area: quote.area ? area(quote.area) : '', job: quote.job || '', total: money(quote.total)
    };
    var blocks = [], title = '', priced = false;
    terms().pieces.forEach(function (piece, at) {
      if (at) { blocks.push({ heading: piece.title }); } else { title = piece.title; }
      blocks.push({ text: piece.text.replace(/\{(client|date|area|job|total)\}/g, function (place, name) { return places[name]; }) });
      if (piece.id === 'acceptance') { blocks.push({ blank: true }); }
      if (piece.id !== 'price') { return; }
      blocks.push(priceRows(quote));
      priced = true;
    });
    if (!priced) { blocks.push(priceRows(quote)); }
    if (quote.deposit) { blocks.push({ rows: [['Deposit', money(quote.deposit)]] }); }
    if (quote.until) { blocks.push({ rows: [['Can be accepted until', W().day(quote.until)]] }); }
    return { title: title, blocks: blocks.concat(invented()) };
  }

  function head(job) {
    return [{ text: lines([terms().practice].concat(terms().invoice.address, terms().reach, terms().invoice.registration)) }, { text: 'Client: ' + client(job), written: true }];
  }

  /* One thing that was found, for the client to say yes to before it is done. */
  function variation(job, quote, id) {
    var M = Swardbook.moneySums, each = job.money.variations[id], sums = M.sums(job.money), whole = M.whole(each, quote);
    var then = sums.quoted + sums.varied + (each.agreed ? 0 : whole);
    return { title: 'Variation ' + each.number, blocks: head(job).concat([
      { text: 'To the quote of ' + W().day(quote.on) + '. Date: ' + W().day(each.on) + '.' },
      { text: each.what, written: true }
    ], each.why ? [{ text: each.why, written: true }] : [], [
      { rows: [['Amount', money(each.amount)], [terms().tax + (quote.inside ? ', in it' : ''), money(each.tax)], [whole < 0 ? 'Less to pay, ' + quote.currency : 'More to pay, ' + quote.currency, money(Math.abs(whole))],
        ['With this, the job comes to', money(then)]], strong: 2 },
      { text: 'I agree to this change, and the rest of the quote stays as it is.' }
    ], signed(), invented()) };
  }

  function invoice(job, quote) {
    var M = Swardbook.moneySums, sums = M.sums(job.money), own = job.money.invoice, tax = terms().tax;
    var agreed = M.inOrder(job.money.variations, 'number').map(function (each) { return each[1]; }).filter(function (each) { return each.agreed; });
    var items = M.values(quote.lines)
      .concat(agreed.map(function (each) { return { name: 'Variation ' + each.number + ': ' + each.what, amount: each.amount, tax: each.tax }; }));
    var paid = M.inOrder(job.money.payments, 'on').map(function (each) {
      return [(each[1].deposit ? 'Deposit, paid ' : 'Paid ') + W().day(each[1].on), '−' + money(each[1].amount)];
    });
    var due = sums.owed > 0 ? ['Owed' + (own.due ? ', to pay by ' + W().day(own.due) : '') + ', ' + quote.currency, money(sums.owed)]
      : sums.owed < 0 ? ['Overpaid, ' + quote.currency, money(-sums.owed)] : ['Nothing is owed, ' + quote.currency, money(0)];
    return { title: 'Invoice ' + own.number, written: true, blocks: head(job).concat([
      { text: 'Name and address:' }, { blank: true },
      { text: 'Date: ' + W().day(own.on) + '. Work as quoted on ' + W().day(quote.on) + (quote.area ? ', on a lawn of ' + area(quote.area) : '') + (job.money.done ? ', done on ' + W().day(job.money.done) : '') + '.' },
      { head: ['What', 'Amount', quote.inside ? tax + ' in it' : tax], rows: items.map(function (each) { return [each.name, money(each.amount), money(each.tax)]; }), written: true },
      { rows: [['Before tax', money(sums.before_tax)], [tax, money(sums.tax)], ['Total', money(sums.quoted + sums.varied)]].concat(paid, [due]), strong: 1 }
    ], terms().invoice.how_to_pay && sums.owed > 0 ? [{ text: terms().invoice.how_to_pay }] : [], invented()) };
  }

  function text(sheet) {
    function told(block, words) { return block.written ? words : Swardbook.told(words); }
    return [told(sheet, sheet.title)].concat(sheet.blocks.map(function (block) {
      if (block.blank) { return '____________________'; }
      if (block.heading) { return '\n' + told(block, block.heading); }
      return block.rows ? block.rows.map(function (row) { return told(block, row[0]) + ': ' + row.slice(1).map(function (cell) { return told(block, cell); }).join(', '); }).join('\n') : told(block, block.text);
    })).join('\n') + '\n';
  }

  function table(place, block) {
    var made = Swardbook.add(place, 'table');
    if (block.head) {
      var head = Swardbook.add(Swardbook.add(made, 'thead'), 'tr');
      block.head.forEach(function (name) { Swardbook.add(head, 'th', '', name).scope = 'col'; });
    }
    var body = Swardbook.add(made, 'tbody');
    block.rows.forEach(function (cells, at) {
      var row = Swardbook.add(body, 'tr', at >= block.rows.length - (block.strong || 0) ? 'sb-money__strong' : '');
      cells.forEach(function (cell, number) {
        var each = Swardbook.add(row, number ? 'td' : 'th', '', cell);
        if (number) { return; }
        each.scope = 'row';
        if (block.written) { each.setAttribute('data-as-written', ''); }
      });
    });
  }

  function show(place, sheet) {
    Swardbook.jobSteps.clear(place);
    Swardbook.add(place, 'h2', '', sheet.title);
    sheet.blocks.forEach(function (block) {
      if (block.rows) { table(place, block); return; }
      var made = Swardbook.add(place, block.heading ? 'h3' : 'p', block.blank ? 'sb-money__blank' : '');
      if (block.written) { made.setAttribute('data-as-written', ''); }
      (block.heading || block.text || '').split('\n').forEach(function (line, at) {
        if (at) { Swardbook.add(made, 'br'); }
        made.appendChild(document.createTextNode(line));
      });
    });
  }

  Swardbook.moneyPapers = { letter: letter, variation: variation, invoice: invoice, text: text, show: show, money: money, head: head, signed: signed, invented: invented };
})();
