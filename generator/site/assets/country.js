/* Readers whose country says things otherwise than the book was written, or who count in US units: what puts the texts right for them is
   loaded for them alone (assets/local). Says once, beside the choice, that the pages now go by the country of the place that was chosen. */
(function () {
  'use strict';
  var TOLD = 'told-units', script = document.currentScript ? document.currentScript.src : '';

  /* For what leaves the page, a message or a calendar file: as it is, until the words of the reader's country are here. */
  Swardbook.told = function (text) { return text; };
  /* Marks an element that shows what a reader typed. */
  Swardbook.asWritten = function (element) {
    element.setAttribute('data-as-written', '');
    return element;
  };

  function fetchWords() {
    var country = Swardbook.preferences.country();
    if (!script || Swardbook.inUsUnits || !Object.keys(Swardbook.contract.countries).length || !country && Swardbook.preferences.units() !== 'us') return;
    Swardbook.load(script.replace(/[^/]*$/, 'local.js')).catch(function () { /* The book's own words stay. */ });
  }
  document.addEventListener('swardbook:country', fetchWords);
  document.addEventListener('swardbook:units', fetchWords);
  fetchWords();

  function noteOf(code) {
    var country = Swardbook.contract.countries[code];
    return 'Pages now show ' + (Swardbook.preferences.units() === 'us' ? 'US' : 'metric') + ' units, and the names that grasses have in ' + country.in + '. Choose other units at the top of any page.';
  }

  var changed = null; /* What the reader last chose with. */
  document.addEventListener('change', function (event) { changed = event.target; }, true);

  document.addEventListener('swardbook:units', function (event) {
    if (event.detail.by !== 'place' || Swardbook.preferences.get(TOLD)) return;
    var beside = changed && changed.closest('form') || document.querySelector('.sb-lead, h1');
    if (!beside) return;
    Swardbook.preferences.set(TOLD, 'yes');
    var note = Swardbook.element('p', 'sb-note', noteOf(Swardbook.preferences.country()));
    note.setAttribute('role', 'status');
    note.setAttribute('data-print-hidden', '');
    beside.insertAdjacentElement('afterend', note);
  });

  /* A page of one place: who has chosen none yet reads it as people there do. */
  Swardbook.component('of-country', function (root) {
    if (!Swardbook.preferences.country()) Swardbook.preferences.set('country', root.getAttribute('data-of-country'));
  }, '[data-of-country]');
})();
