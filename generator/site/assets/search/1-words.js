/* Words as search compares them: without capitals and accents, one spelling for -ise and -ize, and only their stems. What is asked
   becomes ideas: each a word or phrase with all that means the same. */
(function () {
  "use strict";
  var search = Swardbook.search = Swardbook.search || {};
  var stems = new Map();
  var WHO_DOES = /^(....+([bdgmnpt]))\2ers?$/;  // verticutter, trimmers: the machine goes by what it does
  var NAMED = ["grass", "task"];

  var SPELT_OUT = /\b[a-z](?:[-.][a-z])+\b/g;  // N-P-K: one word
  var MEASURED = /([0-9])(m2|m|sqm|ft2|sqft|ft|ha|kgs?|g|lbs?|ml|l|mm|cm|inch(?:es)?|in|acres?|gal)\b/g;  // 200m2: a number and its unit

  function folded(text) {
    return text.toLowerCase().normalize("NFKD").replace(/[\u0300-\u036f]/g, "").replace(/[²³]/g, function (power) { return power === "²" ? "2" : "3"; })
      .replace(/['’](s\b)?/g, "").replace(SPELT_OUT, function (letters) { return letters.replace(/[-.]/g, ""); }).replace(MEASURED, "$1 $2");
  }

  /* Letters, digits and what stands between digits: 20-5-10 and 1/4 are several words, 2.5 is one. */
  search.split = function (text) { return folded(text).match(/[0-9]+\.[0-9]+|[a-z0-9]+/g) || []; };

  search.stem = function (word) {
    if (!stems.has(word)) {
      stems.set(word, window.stemmer(word.replace(/is(e|ed|er|ers|es|ing|ation)$/, "iz$1").replace(/our(s|ed|ing)?$/, "or$1").replace(WHO_DOES, "$1")));
    }
    return stems.get(word);
  };

  /* All that a page is found by beside its title. Only its `names` may be shown: what else it is heard as is slips and turns of phrase. */
  search.goesBy = function (page) { return (page.names || []).concat(page.heard || []); };

  search.stems = function (text) { return search.split(text).map(search.stem); };

  /* The little words of the book and what means the same, ready to be looked up: by the first stem of each phrase. What a grass or a
     task is called anywhere means its title too, unless two of them share the name. */
  search.learn = function (spoken) {
    var byFirst = new Map(), little = new Set(spoken.little);
    function telling(text) { return search.split(text).filter(function (word) { return !little.has(word); }).map(search.stem); }
    function learn(phrase, phrases) {
      if (!phrase.length) { return; }
      if (!byFirst.has(phrase[0])) { byFirst.set(phrase[0], []); }
      byFirst.get(phrase[0]).push({ phrase: phrase, same: phrases });
    }
    /* What little words alone tell from one common word stays out: well water is not all water. */
    function whole(phrase) { return telling(phrase).length > 1 || search.split(phrase).length === 1; }
    spoken.same.forEach(function (group) {
      var phrases = group.filter(whole).map(telling);
      phrases.forEach(function (phrase) { learn(phrase, phrases); });
    });
    var titles = new Map(), inTitles = new Map();
    spoken.pages.forEach(function (page) {
      if (page.kind !== "term") { new Set(telling(page.title)).forEach(function (stem) { inTitles.set(stem, (inTitles.get(stem) || []).concat(page.title)); }); }
    });
    /* A word that other pages are called by stays what it is: sand is what is spread, and not only the spreading of it. */
    function taken(key, title) { return (inTitles.get(key) || []).some(function (other) { return other !== title; }); }
    spoken.pages.filter(function (page) { return NAMED.indexOf(page.kind) >= 0; }).forEach(function (page) {
      [page.title].concat(search.goesBy(page)).forEach(function (name) {
        var key = telling(name).join(" ");
        if (!titles.has(key)) { titles.set(key, new Set()); }
        titles.get(key).add(page.title);
      });
    });
    titles.forEach(function (of, key) {
      if (of.size === 1 && !taken(key, Array.from(of)[0])) { learn(key.split(" "), [key.split(" "), telling(Array.from(of)[0])]); }
    });
    return {
      kinds: spoken.kinds, little: little, weak: new Set(spoken.weak.map(search.stem)), byFirst: byFirst,
      meant: spoken.meant.map(function (each) { return { ask: new RegExp(each.ask), kinds: each.kinds }; }),
      heard: spoken.heard.map(function (each) { return { ask: new RegExp(each.ask), as: each.as }; })
    };
  };

  function startsAt(stems, at, phrase) {
    return phrase.every(function (stem, index) { return stems[at + index] === stem; });
  }

  /* What is asked, as ideas in order: {ways: [[stem, ...], ...] the asker's own first, weak, last: still being typed}.
     spelling: gives the nearest words of the book for one that it does not know. */
  search.ideas = function (text, words, spelling) {
    words.heard.forEach(function (each) { text = text.toLowerCase().replace(each.ask, each.as); });
    var split = search.split(text);
    var said = split.filter(function (word) { return !words.little.has(word); });
    if (!said.length) { said = split; }
    var stems = said.map(search.stem), ideas = [];
    for (var at = 0; at < stems.length;) {
      var found = (words.byFirst.get(stems[at]) || []).filter(function (each) { return startsAt(stems, at, each.phrase); });
      var length = Math.max.apply(null, [1].concat(found.map(function (each) { return each.phrase.length; })));
      var own = stems.slice(at, at + length), ways = [own];
      found.filter(function (each) { return each.phrase.length === length; }).forEach(function (each) {
        each.same.forEach(function (way) { if (!ways.some(function (known) { return known.join() === way.join(); })) { ways.push(way); } });
      });
      at += length;
      var last = at >= stems.length && said[at - 1] === split[split.length - 1] && !/[\s.?!]$/.test(text);
      if (length === 1 && spelling) {
        spelling(said[at - 1], last).map(search.stem).forEach(function (stem) { if (stem !== own[0]) { ways.push([stem]); } });
      }
      ideas.push({
        ways: ways, weak: own.every(function (stem) { return words.weak.has(stem) || /^[0-9.]+$/.test(stem); }),
        last: last
      });
    }
    return ideas;
  };
})();
