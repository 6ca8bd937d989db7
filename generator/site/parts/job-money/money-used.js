/* Hours and packs used, beside those quoted. What is over is offered as a variation, and charged by nobody but the reader. */
(function () {
  'use strict';
  var HOUR = 'h';

  function W() { return Swardbook.jobWords; }
  function used(job) { return job.money && job.money.used || {}; }

  /* {key, name, quoted, used, over, says, unit price in the currency or null} for hours, and for each product with packs. */
  function rows(job, quote, out) {
    var prices = {}, had = used(job), packs = quote.packs || {};
    out.shopping.forEach(function (line) { if (line.product) { prices[line.product] = line.price_each; } });
    var found = [{ key: '', name: 'Hours of our own work', quoted: quote.minutes || 0, used: had.minutes, says: W().spent, price: Swardbook.jobs.money().hourly_price, per: 60 }];
    Object.keys(packs).forEach(function (key) {
      found.push({ key: key, name: packs[key].name, quoted: packs[key].count, used: had.packs && had.packs[key], says: function (number) { return W().count(number, 'pack'); }, price: prices[key] || null, per: 1 });
    });
    found.forEach(function (each) { each.over = each.used === undefined ? 0 : Math.max(0, each.used - each.quoted); });
    return found;
  }

  /* What was typed, or null where it is neither hours nor a count. */
  function read(key, text) {
    if (key) { return /^\d{1,6}([.,]\d{1,2})?$/.test(text) ? +text.replace(',', '.') : null; }
    try {
      var minutes = Math.round(Swardbook.quantity.read(Swardbook.readerUnits.beside(text, HOUR), HOUR) / 60);
      return minutes >= 0 && minutes <= Swardbook.contract.kept.most_cents ? minutes : null;
    } catch (problem) {
      return Swardbook.sentenceOf(problem) && null;
    }
  }

  /* Writes what was typed into the job's money; false where it cannot be read. */
  function take(money, key, text) {
    var value = text.trim() ? read(key, text.trim()) : undefined;
    if (value === null) { return false; }
    money.used = money.used || {};
    if (key) { money.used.packs = money.used.packs || {}; }
    var place = key ? money.used.packs : money.used, name = key || 'minutes';
    if (value === undefined) { delete place[name]; } else { place[name] = value; }
    return true;
  }

  function write(body, all) {
    Swardbook.jobSteps.clear(body);
    all.forEach(function (each) {
      var row = Swardbook.add(body, 'tr');
      Swardbook.add(row, 'th', '', each.name).scope = 'row';
      Swardbook.add(row, 'td', '', each.says(each.quoted));
      var field = Swardbook.add(Swardbook.add(row, 'td'), 'input', 'sb-input');
      field.type = 'text';
      field.maxLength = Swardbook.contract.kept.longest.measure;
      field.dataset.used = each.key;
      field.setAttribute('aria-label', each.name + ', used');
      Swardbook.add(row, 'td');
    });
  }

  /* The fields stay while the quote does: somebody may be on the way from one to the next. offer(words, amount in cents or null): fills a
     variation in. */
  function show(body, job, quote, out, locked, offer) {
    var all = rows(job, quote, out);
    Swardbook.jobSteps.anew(body, [quote.on, all.map(function (each) { return [each.key, each.name, each.quoted]; })], function () { write(body, all); });
    all.forEach(function (each, at) {
      var row = body.children[at], field = row.querySelector('input'), last = row.lastChild, over = each.over ? each.says(each.over) : '';
      var typed = each.used === undefined ? '' : each.key ? String(each.used) : +(each.used / 60).toFixed(2) + ' ' + HOUR;
      Swardbook.jobSteps.anew(field, [each.used], function () { field.value = typed; Swardbook.markInvalid(field, false); });
      Swardbook.jobSteps.anew(last, [over, locked], function () {
        last.textContent = over ? over + ' ' : '';
        if (!over || locked) { return; }
        last.appendChild(Swardbook.button('Offer as a variation', function () {
          offer(each.name + ': ' + over + ' more', each.price === null ? null : Swardbook.moneySums.cents(each.over / each.per * each.price));
        }));
      });
    });
  }

  Swardbook.moneyUsed = { show: show, take: take };
})();
