/* Which pages answer. The library finds pages by word, forgiving a slip of the pen; here its finds are weighed: how much of what was
   asked a page covers, whether the page is called just that, whether one sentence says it, and what kind of page such a question wants. */
(function () {
  "use strict";
  var search = Swardbook.search;
  var WEAK = 0.25, OTHER_WAY = 0.85, READ = 40, FAINT = 10, LEAST = 0.001;
  /* What a page's points are the sum of: factors for logarithms and for shares from 0 to 1. found: what the library made of its words.
     covered: the share of what was asked that it holds. called: that it is called just that, and like: nearly; title: by its first name;
     verbatim: word for word. own: the share it holds in the asker's own words. at_once: the most that one of its sentences says. */
  var POINTS = search.POINTS = { found: 2.2, covered: 2.6, called: 2.8, like: 0.9, title: 0.9, verbatim: 0.5, alike: 1.1, own: 0.6, at_once: 0.75, meant: 2.1 };

  /* How rare an idea is: what few pages hold tells more. */
  function weight(idea, held, all) {
    return (idea.weak ? WEAK : 1) * Math.log(1 + all / (1 + held.pages.size));
  }

  function sum(ats, weights) { return ats.reduce(function (total, at) { return total + weights[at]; }, 0); }

  /* What the way of asking is after: a factor for each kind of page. */
  function wanted(text, spoken) {
    var kinds = {};
    spoken.meant.forEach(function (each) {
      if (!each.ask.test(text)) { return; }
      Object.keys(each.kinds).forEach(function (kind) { kinds[kind] = (kinds[kind] || 1) * each.kinds[kind]; });
    });
    return kinds;
  }

  /* What of a page matched: each stem with its idea, and whether the asker said it so. */
  function matched(held, ideas, weights) {
    var stems = new Map();
    held.forEach(function (each, at) {
      each.stems.forEach(function (stem) {
        var own = ideas[at].ways[0].indexOf(stem) >= 0;
        if (own || !stems.has(stem)) { stems.set(stem, { idea: at, own: own, weight: weights[at] * (own ? 1 : OTHER_WAY) }); }
      });
    });
    return stems;
  }

  /* The points of a page but for what its sentences say, or null where it holds nothing of what was asked. */
  function judged(page, path, asked, index, spoken) {
    var found = 0, covered = 0, own = 0, square = function (share) { return share * share; };
    var parts = index.called.get(path), called = search.calledThat(parts, asked.meaning, asked.weights, asked.total);
    asked.held.forEach(function (each, at) {
      var find = each.pages.get(path);
      if (find || called.ats.indexOf(at) >= 0) { covered += asked.weights[at]; }
      if (each.own.has(path)) { own += asked.weights[at]; }
      found += (find || 0) * (asked.ideas[at].weak ? WEAK : 1);
    });
    if (!covered) { return null; }
    var alike = index.wordings.get(path).reduce(function (most, name) { return Math.max(most, search.alike(asked.wording, name, asked.meaning)); }, 0);
    var just = sum(called.ats, asked.weights) / asked.total;
    return {
      page: page, stems: asked.stems, called: just,
      score: POINTS.found * Math.log(found + LEAST) + POINTS.covered * Math.log(covered / asked.total)
        + POINTS.called * square(just) * parts.length + POINTS.like * square(called.like) + POINTS.title * square(called.title)
        + POINTS.alike * square(alike) + POINTS.verbatim * index.verbatim.get(path).has(asked.verbatim) + POINTS.own * own / asked.total
        + POINTS.meant * Math.log(asked.kinds[page.kind] || 1) + Math.log((page.boost || 1) * ((spoken.kinds[page.kind] || {}).weight || 1))
    };
  }

  /* Pages for what was asked, best first: [{page, score, stems: that matched, each with its idea and weight, called: the share that names it}]. */
  search.rank = function (text, index, spoken) {
    var ideas = search.ideas(text, spoken, index.spelling);
    var held = ideas.map(function (idea) { return search.holding(idea, index); });
    var weights = ideas.map(function (idea, at) { return weight(idea, held[at], index.pages.size); });
    var asked = {
      ideas: ideas, held: held, weights: weights, total: sum(Object.keys(weights), weights), meaning: search.meaning(held), stems: matched(held, ideas, weights),
      kinds: wanted(text.toLowerCase(), spoken), verbatim: search.verbatim(text), wording: search.wording(text, spoken)
    };
    var ranked = [];
    index.pages.forEach(function (page, path) {
      var found = judged(page, path, asked, index, spoken);
      if (found) { ranked.push(found); }
    });
    function order() { ranked.sort(function (one, other) { return other.score - one.score; }); }
    order();
    ranked.slice(0, READ).forEach(function (each) { each.score += POINTS.at_once * Math.pow(search.saidAtOnce(each.page, asked.meaning, weights, asked.total), 2); });
    order();
    return ranked.filter(function (each) { return each.score > ranked[0].score - FAINT; });
  };
})();
