/* The page of what is kept. What is kept and how far it is, assets/offline.js tells; a page that was asked for and is not kept is named here. */
Swardbook.component('keep-book', function (root) {
  'use strict';
  var MB = 1e6, P = Swardbook.parts(root), names = JSON.parse(root.getAttribute('data-names')), refused = false;
  var SAY = {
    wait: 'Looking at what is kept.',
    refused: 'This browser keeps no pages of this book. Open it where there is a signal.',
    unknown: 'The list of pages cannot be fetched just now. Try again where there is a signal.',
    needed: 'Kept: the first page, cautions, aftercare, search and whatever you opened, with the grass and the place that you chose. The whole book takes about {packed} MB on this device. It is up to {bytes} MB to fetch, so fetch it where that costs nothing.',
    going: 'Keeping the whole book: {kept} of {of} files. Read on meanwhile. It works whenever a page of the book is open.',
    whole: 'The whole book is kept on this device: {of} files, about {packed} MB. A new edition is kept whole as well.',
    lost: 'The signal went. What was fetched so far stays, and the rest comes when a page is next opened with a signal.',
    full: 'This device has no room left for the whole book. What was kept so far stays: {kept} of {of} files.',
    more: '{count} pages are kept in all.'
  };

  function megabytes(bytes) { return String(Math.max(Math.ceil(bytes / MB), 1)); }

  function filled(text, chosen) {
    return text.replace(/\{(grass|place)\}/g, function (all, kind) { return chosen[kind] || ''; });
  }

  function sentence(said, whole) {
    if (refused) { return SAY.refused; }
    if (!said) { return SAY.wait; }
    if (said.full) { return SAY.full; }
    if (!said.known) { return SAY.unknown; }
    if (whole) { return SAY.whole; }
    if (said.going) { return SAY.going; }
    return said.lost && said.whole ? SAY.lost : SAY.needed;
  }

  function showKept(said) {
    var ids = { grass: Swardbook.preferences.get('grass') || '', place: Swardbook.preferences.get('place') || '' };
    var called = { grass: names[ids.grass] || '', place: names[ids.place] || '' };
    Swardbook.each(root, '[data-kept]', function (item) {
      var page = filled(item.getAttribute('data-kept'), ids), link = item.querySelector('a');
      item.hidden = said.pages.indexOf(page) < 0;
      if (item.hidden) { return; }
      link.href = new URL(page, Swardbook.offline.top).href;
      item.dataset.words = item.dataset.words || link.textContent;
      Swardbook.say(link, filled(item.dataset.words, called));
    });
    Swardbook.say(P.more, Swardbook.filled(SAY.more, { count: String(said.pages.length) }));
    P.there.hidden = P.more.hidden = said.pages.length === 0;
  }

  function show(said) {
    var whole = Boolean(said) && said.known && said.kept >= said.of, going = Boolean(said) && Boolean(said.going);
    Swardbook.say(P.said, Swardbook.filled(sentence(said, whole), {
      kept: String(said ? said.kept : 0), of: String(said ? said.of : 0), bytes: megabytes(said ? said.bytes : 0), packed: megabytes(said ? said.packed : 0)
    }));
    Swardbook.hide(P.progress, !going);
    if (going) { P.progress.value = said.kept / said.of; }
    Swardbook.hide(P.whole, !said || !said.known || whole || going);
    Swardbook.hide(P.stop, !going);
    Swardbook.hide(P.only, !said || going || !(whole || said.whole));
    if (said && said.pages) { showKept(said); }
  }

  /* Nothing of an address is read as markup, and none leads out of the book. */
  function tellAsked() {
    var asked = new URLSearchParams(window.location.search).get('asked');
    if (asked === null) { return; }
    var address = new URL(asked, Swardbook.offline.top);
    if (address.href.indexOf(Swardbook.offline.top) !== 0) { return; }
    address.hash = window.location.hash;
    document.querySelector('h1').textContent = 'This page is not kept on this device';
    document.title = document.title.replace(/^[^-]*/, 'Not kept on this device ');
    P['asked-for'].textContent = asked.replace(/(^|\/)index\.html$|\.html$|\/$/, '').replace(/-/g, ' ').split('/').map(function (each) { return Swardbook.capital(names[each.replace(/ /g, '-')] || each); }).join(': ') || 'The first page';
    P.again.href = address.href;
    P.asked.hidden = false;
    window.addEventListener('online', function () { window.location.replace(address.href); });
  }

  if (window.location.protocol === 'file:') { return; }
  P.folder.hidden = true;
  P.work.hidden = false;
  refused = !Swardbook.offline;
  if (!refused) {
    tellAsked();
    P.whole.addEventListener('click', function () {
      /* A browser that is asked so does not clear the book away when it is short of room. */
      if (navigator.storage && navigator.storage.persist) { navigator.storage.persist().catch(function () { /* It may still keep it. */ }); }
      Swardbook.offline.keepWhole();
    });
    P.stop.addEventListener('click', Swardbook.offline.stop);
    P.only.addEventListener('click', Swardbook.offline.onlyNeeded);
    document.addEventListener('swardbook:offline', function (event) {
      refused = event.detail === null;
      show(event.detail);
    });
  }
  show(null);
});
