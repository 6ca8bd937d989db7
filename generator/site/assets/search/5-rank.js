/* Which pages answer. The library finds pages by word, forgiving a slip of the pen; here its finds are weighed: how much of what was
   asked a page covers, whether the page is called just that, whether one sentence says it, and what kind of page such a question wants. */
(function () {
  "use strict";
  var search = Swardbook.search;
  var WEAK = 0.25, OTHER_WAY = 0.85, READ = 30, MOST_JUDGED = 120, MOST_IDEAS = 30, FAINT = 10, LEAST = 0.001;
  /* What a page's points are the sum of: factors for logarithms and for shares from 0 to 1. found: what the library made of its words.
     covered: the share of what was asked that it holds. called: that it is called just that, and like: nearly; title: by its first name;
     verbatim: word for word. own: the share it holds in the asker's own words. at_once: the most that one of its sentences says. */
  var POINTS = search.POINTS = { found: 2.2, covered: 2.6, called: 2.8, like: 0.9, title: 0.9, verbatim: 0.5, alike: 1.1, own: 0.6, at_once: 0.75, meant: 2.1 };

  /* How rare an idea is: what few pages hold tells more. */
  function weight(idea, held, all) {
    return (idea.weak ? WEAK : 1) * Math.log(1 + all / (1 + held.pages.size));
  }

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

  function square(share) { return share * share; }

  /* The pages that the library found, the likeliest first, by what it made of their words and how much of what was asked they cover. */
  function likeliest(asked) {
    var likely = new Map();
    asked.held.forEach(function (each, at) {
      each.pages.forEach(function (find, path) {
        var so = likely.get(path) || { path: path, found: 0, covered: 0 };
        so.found += find * (asked.ideas[at].weak ? WEAK : 1);
        so.covered += asked.weights[at];
        likely.set(path, so);
      });
    });
    function points(each) { return POINTS.found * Math.log(each.found + LEAST) + POINTS.covered * Math.log(each.covered); }
    return Array.from(likely.values()).sort(function (one, other) { return points(other) - points(one); }).slice(0, MOST_JUDGED);
  }

  /* The points of a page that was found, but for what its sentences say. */
  function judged(path, found, asked, index, spoken) {
    var covered = 0, own = 0, page = index.pages.get(path), parts = index.called.get(path), meaning = asked.meaning;
    var called = search.calledThat(parts, meaning), just = meaning.weight(called.ideas), alike = 0, verbatim = 0;
    asked.held.forEach(function (each, at) {
      if (each.pages.has(path)) { covered |= 1 << at; }
      if (each.own.has(path)) { own |= 1 << at; }
    });
    index.wordings.get(path).forEach(function (name) {
      alike = Math.max(alike, search.alike(asked.wording, name, meaning));
      verbatim = verbatim || Number(name.verbatim === asked.wording.verbatim);
    });
    return {
      page: page, stems: asked.stems, called: just,
      score: POINTS.found * Math.log(found + LEAST) + POINTS.covered * Math.log(meaning.weight(covered | called.ideas))
        + POINTS.called * square(just) * parts.length + POINTS.like * square(called.like) + POINTS.title * square(called.title)
        + POINTS.alike * square(alike) + POINTS.verbatim * verbatim + POINTS.own * meaning.weight(own)
        + POINTS.meant * Math.log(asked.kinds[page.kind] || 1) + Math.log((page.boost || 1) * ((spoken.kinds[page.kind] || {}).weight || 1))
    };
  }

  /* Pages for what was asked, best first: [{page, score, stems: that matched, each with its idea and weight, called: the share that names it}]. */
  search.rank = function (text, index, spoken) {
    var ideas = search.ideas(text, spoken, index.spelling).slice(0, MOST_IDEAS);
    var held = ideas.map(function (idea) { return search.holding(idea, index); });
    var weights = ideas.map(function (idea, at) { return weight(idea, held[at], index.pages.size); });
    var asked = {
      ideas: ideas, held: held, weights: weights, meaning: search.meaning(held, weights), stems: matched(held, ideas, weights),
      kinds: wanted(text.toLowerCase(), spoken), wording: search.wording(text, spoken)
    };
    var ranked = likeliest(asked).map(function (each) { return judged(each.path, each.found, asked, index, spoken); });
    function order() { ranked.sort(function (one, other) { return other.score - one.score; }); }
    order();
    ranked.slice(0, READ).forEach(function (each) { each.score += POINTS.at_once * Math.pow(search.saidAtOnce(each.page, asked.meaning), 2); });
    order();
    return ranked.filter(function (each) { return each.score > ranked[0].score - FAINT; });
  };
})();
