/* How far what was asked is what a page is called, or what one of its sentences says. A text is a list of stems; what was asked is a
   list of ideas, each with its weight; a set of ideas is a number with a bit for each, for this runs over thousands of names a letter. */
(function () {
  "use strict";
  var search = Swardbook.search;
  var LITTLE = 0.35, WEAK = 0.5, OTHER_WAY = 0.85;

  /* What was asked, ready to be looked for: {single: the idea each stem says, said(text): the set of ideas in a text and how many of its
     stems say them, weight(set): the share of what was asked, from 0 to 1}. A phrase counts where all its words stand. */
  search.meaning = function (held, weights) {
    var single = new Map(), phrases = [], shares = new Map();
    var total = weights.reduce(function (sum, each) { return sum + each; }, 0);
    held.forEach(function (each, at) {
      each.stems.forEach(function (stem) { if (!single.has(stem)) { single.set(stem, at); } });
      each.phrases.forEach(function (phrase) { phrases.push({ stems: phrase, at: at }); });
    });

    function said(text) {
      var ideas = 0, stems = 0;
      for (var at = 0; at < text.length; at += 1) {
        var idea = single.get(text[at]);
        if (idea !== undefined) { ideas |= 1 << idea; stems += 1; }
      }
      for (var next = 0; next < phrases.length; next += 1) {
        var phrase = phrases[next].stems;
        if (text.indexOf(phrase[0]) < 0 || !phrase.every(function (stem) { return text.indexOf(stem) >= 0; })) { continue; }
        ideas |= 1 << phrases[next].at;
        stems += phrase.filter(function (stem) { return !single.has(stem); }).length;
      }
      return { ideas: ideas, stems: Math.min(stems, text.length) };
    }

    function weight(ideas) {
      if (!shares.has(ideas)) {
        shares.set(ideas, weights.reduce(function (sum, each, at) { return ideas & (1 << at) ? sum + each : sum; }, 0) / total);
      }
      return shares.get(ideas);
    }
    return { single: single, said: said, weight: weight };
  };

  /* A text as it was worded: {words: its stems, each once, with the weight of each, whole: the sum of them, verbatim, telling: the stems
     that say which page is meant}. With its little words, for too much sand is a problem and how much sand a sum. */
  search.wording = function (text, spoken) {
    var words = new Map(), whole = 0, said = [], all = [];
    search.split(text).forEach(function (word) {
      var stem = search.stem(word), little = spoken.little.has(word);
      all.push(stem);
      if (!little) { said.push(stem); }
      if (words.has(stem)) { return; }
      words.set(stem, little ? LITTLE : spoken.weak.has(stem) ? WEAK : 1);
      whole += words.get(stem);
    });
    var telling = said.filter(function (stem) { return !spoken.weak.has(stem); });
    return { words: words, whole: whole, verbatim: all.join(" "), telling: telling.length ? telling : said };
  };

  /* How far two wordings are the same, from 0 to 1: what they share of what either says. meaning: what else means the same. */
  search.alike = function (asked, name, meaning) {
    var both = 0, ideas = 0;
    name.words.forEach(function (weight, stem) {
      var idea = meaning.single.get(stem), bit = idea === undefined ? 0 : 1 << idea;
      if (asked.words.has(stem)) { both += weight; }
      else if (bit && !(ideas & bit)) { both += weight * OTHER_WAY; }
      ideas |= bit;
    });
    return both / (asked.whole + name.whole - both);
  };

  /* The wordings of the names each page goes by, its title first; and of a page that joins others, the names of each part. */
  search.nameAll = function (index, spoken) {
    index.wordings = new Map();
    index.called = new Map();
    index.pages.forEach(function (page, path) {
      index.wordings.set(path, [page.title].concat(search.goesBy(page)).map(function (name) { return search.wording(name, spoken); }));
    });
    index.pages.forEach(function (page, path) {
      var about = (page.about || []).filter(function (part) { return index.pages.has(part); });
      index.called.set(path, (about.length ? about : [path]).map(function (part) {
        return index.wordings.get(part).map(function (name) { return name.telling; }).filter(function (name) { return name.length; });
      }));
    });
  };

  /* Which ideas are just what a page is called, {ideas: the set, like: how near its nearest name comes to what was asked, title: and its
     title, from 0 to 1}; none where a part goes unnamed. One idea does not name two parts: blue couch is a grass, and of Queensland,
     without asking for Brisbane. */
  search.calledThat = function (parts, meaning) {
    var used = 0, like = 0, title = 0, every = true;
    parts.forEach(function (list) {
      var mine = 0;
      list.forEach(function (name, at) {
        var said = meaning.said(name);
        if (!said.ideas) { return; }
        var near = said.stems / name.length * meaning.weight(said.ideas);
        like = Math.max(like, near);
        if (at === 0) { title = Math.max(title, near); }
        if (said.stems >= name.length) { mine |= said.ideas; }
      });
      every = every && (mine & ~used) !== 0;
      used |= mine;
    });
    if (every) { return { ideas: used, like: like, title: title }; }
    return parts.length > 1 ? { ideas: 0, like: 0, title: 0 } : { ideas: 0, like: like, title: title };
  };

  /* The most of what was asked that one sentence of a page says, from 0 to 1. */
  search.saidAtOnce = function (page, meaning) {
    var most = 0;
    page.opening = page.opening || search.stems(page.lead || "");
    [page.opening].concat(page.stemmed || []).forEach(function (sentence) {
      var ideas = meaning.said(sentence).ideas;
      if (ideas) { most = Math.max(most, meaning.weight(ideas)); }
    });
    return most;
  };
})();
