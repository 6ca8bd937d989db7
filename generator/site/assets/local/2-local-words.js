/* The texts as people in the reader's country say them: grasses by the name they have there, the seasons, the order of a date. Whatever
   the page shows goes through here, also what a script makes later. Left alone is what a reader typed, and what tells names apart: it
   stands in an element with data-as-written. Twin: local words. */
(function () {
  'use strict';
  var LEFT = 'script, style, textarea, code, pre, math, cite, [data-as-written]';
  /* These tell figures in both units, or in the one that was asked for. */
  var FIGURES_LEFT = '.sb-quantity__metric:not(:only-child), .sb-quantity__us, .sb-calculator__figure, .sb-calculator__other, .sb-calculator__working, .sb-calculator__found';
  var HEARD = ['aria-label', 'title', 'placeholder', 'alt'];
  var SAID = Swardbook.contract.said, COUNTRIES = Swardbook.contract.countries, SPOKEN = Swardbook.contract.spoken;
  var date = new RegExp(SAID.date, 'g'), somebody = new RegExp(SAID.somebody);
  var country, pattern, us, of; /* Of this reader; nothing is replaced without a country, nor a figure for one who counts in metric units. */
  var shown = new Map(); /* A text that was replaced: what it was, and what stands there. */

  function word(found, at, text) {
    var said = country.said[found.replace('\n', ' ').toLowerCase()];
    var small = found.charAt(0) === found.charAt(0).toLowerCase();
    if (at && SAID.no_word.indexOf(text.charAt(at - 1)) >= 0 || !small && somebody.test(text.slice(at + found.length))) return found;
    return small ? said : Swardbook.capital(said);
  }

  function monthFirst(found, weekday, day, until, month, year) {
    return (weekday ? weekday + ', ' : '') + month + ' ' + day + (until || '') + (year ? ', ' + year : '');
  }

  /* A text of the book as people there say it. */
  function told(text, figuresLeft) {
    if (us && !figuresLeft) text = Swardbook.inUsUnits(text);
    if (pattern) text = text.replace(pattern, function (found, at) { return word(found, at, text); });
    return country && country.month_first ? text.replace(date, monthFirst) : text;
  }

  /* The text of a node or of an attribute, put right; what was there before is kept, for a reader who goes back. */
  function put(node, name, text, element, set) {
    var before = shown.get(node) || {}, was = before[name], own = was && was.there === text ? was.own : text, now = told(own, element.closest(FIGURES_LEFT));
    if (now === own) delete before[name];
    else before[name] = { own: own, there: now };
    if (Object.keys(before).length) shown.set(node, before);
    else shown.delete(node);
    if (now !== text) set(now);
  }

  function isLeft(element) { return !element || element.closest(LEFT); }
  function ofText(node) {
    var element = node.parentElement;
    if (element && (shown.has(node) || told(node.data) !== node.data && !isLeft(element))) put(node, '', node.data, element, function (text) { node.data = text; });
  }
  function ofElement(element) {
    HEARD.forEach(function (name) {
      var text = element.getAttribute(name);
      if (text && !isLeft(element)) put(element, name, text, element, function (now) { element.setAttribute(name, now); });
    });
  }

  function all(root) {
    if (root.nodeType === 3) ofText(root);
    if (root.nodeType !== 1 || isLeft(root)) return;
    var walk = document.createTreeWalker(root, 5); /* Elements and texts. */
    for (var node = root; node; node = walk.nextNode()) (node.nodeType === 3 ? ofText : ofElement)(node);
  }

  var seen = new MutationObserver(function (changes) {
    changes.forEach(function (change) {
      if (change.type === 'childList') Swardbook.list(change.addedNodes).forEach(function (node) { if (node.isConnected) all(node); });
      else (change.type === 'attributes' ? ofElement : ofText)(change.target);
    });
  });

  function start() {
    var code = Swardbook.preferences.country(), next = Swardbook.own(COUNTRIES, code) ? Object.assign({}, COUNTRIES[code], SPOKEN[code]) : null, nextUs = Swardbook.preferences.units() === 'us';
    if (code === of && nextUs === us) return;
    of = code;
    country = next;
    us = nextUs;
    pattern = country && country.pattern ? new RegExp(country.pattern, 'gi') : null;
    seen.disconnect();
    Array.from(shown.keys()).forEach(function (node) { if (node.isConnected) all(node); else shown.delete(node); });
    if (!us && !pattern && !(country && country.month_first)) return;
    all(document.documentElement);
    seen.observe(document.documentElement, { subtree: true, childList: true, characterData: true, attributes: true, attributeFilter: HEARD });
  }

  /* For what leaves the page: a message, a calendar file. */
  Swardbook.told = function (text) { return told(text); };
  document.addEventListener('swardbook:country', start);
  document.addEventListener('swardbook:units', start);
  if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', start);
  else start();
})();
