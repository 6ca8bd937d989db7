/* The money of a job, in whole cents: what is quoted, varied, paid and owed. Tax is worked out by the estimate calculator alone, and kept
   with what it is of, so that nothing that was quoted or agreed changes with the practice's file. */
(function () {
  'use strict';
  var K = Swardbook.contract['job-planner'], MOST = Swardbook.contract.kept.most_cents, LONGEST = Swardbook.contract.kept.longest;
  var PLAIN = /^(-?)(\d{1,9})(?:[.,](\d{1,2}))?$/, GROUPED = /^-?\d{1,3}(,\d{3})+(\.\d{1,2})?$/;

  /* Half away from zero, as the lines of a price are rounded. */
  function cents(value) { return Math.sign(value) * Math.floor(Math.abs(value) * K.cents + 0.5 + K.hair); }

  /* Cents of an amount as a person types it, read sign by sign; null for what is none. */
  function typed(text) {
    var found = text.replace(/\s/g, ''), parts = PLAIN.exec(GROUPED.test(found) ? found.replace(/,/g, '') : found);
    if (!parts) { return null; }
    var amount = +parts[2] * 100 + +((parts[3] || '') + '00').slice(0, 2);
    return amount > MOST ? null : parts[1] && amount ? -amount : amount;
  }

  /* The tax on an amount, or in it. terms: {rate [share], inside}. */
  function taxOf(amount, terms) {
    var practice = Swardbook.jobs.held().practice;
    var found = Swardbook.calculator.answers(Swardbook.calculators.estimate, Object.assign({}, practice.estimate, {
      lines: [Math.abs(amount) / K.cents], minimum_charge: 0, tax: terms.rate, tax_inside: terms.inside ? 1 : 0, deposit_share: 0
    }));
    return Math.sign(amount) * cents(found.tax_amount) || 0;
  }

  /* Lines with a share of the tax each. What rounding leaves goes to the line where it arises, so that the shares come to the tax of the whole. */
  function withTax(lines, terms) {
    var sum = 0, before = 0;
    return lines.map(function (line) {
      sum += line.amount;
      var upToHere = taxOf(sum, terms), tax = upToHere - before;
      before = upToHere;
      return { name: line.name, amount: line.amount, tax: tax };
    });
  }

  function numbered(list) {
    var out = {};
    list.forEach(function (each, at) { out[at + 1] = each; });
    return out;
  }
  function values(record) { return Object.keys(record || {}).map(function (name) { return record[name]; }); }
  function total(list, field) { return list.reduce(function (sum, each) { return sum + each[field]; }, 0); }

  /* What the job comes to now, as a quote would say it; null where it has no price. least: what the line is called that makes up the minimum. */
  function priced(job, out, plan, least) {
    var cost = out.cost, practice = Swardbook.jobs.held().practice;
    if (!cost) { return null; }
    var terms = { rate: practice.tax, inside: practice.tax_inside > 0 }, sums = { before_tax: cents(cost.before_tax), tax: cents(cost.tax), total: cents(cost.total) };
    var lines = cost.lines.map(function (line) { return { name: Swardbook.jobLists.lineName(line).slice(0, LONGEST.entry), amount: cents(line.amount) }; });
    var short = (terms.inside ? sums.total : sums.before_tax) - total(lines, 'amount');
    if (short > 0) { lines.push({ name: least, amount: short }); }
    var own = out.steps.filter(function (step) { return step.counted && step.who === 'hands'; }), packs = {};
    out.shopping.forEach(function (line) { if (line.product && line.packs !== null) { packs[line.product] = { name: line.name.slice(0, LONGEST.entry), count: line.packs }; } });
    var titles = own.map(function (step) { return step.title; }).filter(function (title, at, all) { return all.indexOf(title) === at; });
    return Object.assign({
      currency: cost.currency, rate: terms.rate, inside: terms.inside, lines: numbered(withTax(lines, terms)), deposit: cents(cost.deposit || 0),
      minutes: Math.round(own.reduce(function (sum, step) { return sum + (step.minutes || 0); }, 0)), packs: packs,
      job: (Swardbook.jobs.book().plans[job.plan].name + ': ' + titles.join('; ')).slice(0, LONGEST.quoted), area: job.area
    }, sums);
  }

  /* [id, quote] of the latest quote; [null, null] where nothing is quoted. */
  function latest(money) {
    return Object.keys(money.quotes || {}).sort().reduce(function (best, id) {
      return !best[1] || money.quotes[id].number >= best[1].number ? [id, money.quotes[id]] : best;
    }, [null, null]);
  }

  /* [[id, row]] by a field, and by number where that is the same. */
  function inOrder(record, field) {
    return Object.keys(record || {}).map(function (id) { return [id, record[id]]; }).sort(function (one, other) {
      var by = one[1][field] === other[1][field] ? 'number' : field;
      return one[1][by] < other[1][by] ? -1 : one[1][by] > other[1][by] ? 1 : one[0] < other[0] ? -1 : 1;
    });
  }

  /* With its tax. */
  function whole(variation, quote) { return variation.amount + (quote.inside ? 0 : variation.tax); }

  /* {quoted, varied, paid, owed, before_tax, tax}: only what is agreed is owed. What is varied has the tax that its own sheet named. */
  function sums(money) {
    var quote = latest(money)[1], agreed = values(money.variations).filter(function (each) { return each.agreed; });
    if (!quote) { return null; }
    var varied = agreed.reduce(function (sum, each) { return sum + whole(each, quote); }, 0), paid = total(values(money.payments), 'amount');
    var tax = quote.tax + total(agreed, 'tax');
    return { quoted: quote.total, varied: varied, paid: paid, owed: quote.total + varied - paid, tax: tax, before_tax: quote.total + varied - tax };
  }

  /* Whether the job comes to the lines that were quoted. */
  function same(quote, now) {
    function lines(each) { return JSON.stringify(values(each.lines).map(function (line) { return [line.name, line.amount]; })); }
    return quote.total === now.total && lines(quote) === lines(now);
  }

  Swardbook.moneySums = {
    cents: cents, typed: typed, taxOf: taxOf, withTax: withTax, priced: priced, latest: latest, inOrder: inOrder, values: values, whole: whole, sums: sums, same: same
  };
})();
