/* Says once, beside the choice, that the pages now go by the country of the place that was chosen. */
(function () {
  'use strict';
  var TOLD = 'told-units';

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
