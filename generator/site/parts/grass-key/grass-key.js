/* The key of grasses, one question at a time for who wants it. Paper gets the whole key whatever the screen shows. */
Swardbook.component('grass-key', function (root) {
  var steps = Swardbook.list(root.querySelectorAll('[data-step]'));
  var trail = [];

  var button = Swardbook.button;

  function show(id) {
    steps.forEach(function (step) { step.hidden = Boolean(id) && step.id !== id; });
    root.classList.toggle('sb-key--one', Boolean(id));
    begin.hidden = Boolean(id);
    whole.hidden = !id;
    back.hidden = !id || trail.length < 2;
    if (id) document.getElementById(id).focus();
  }

  function start() {
    trail = [steps[0].id];
    show(steps[0].id);
  }

  function stepBack() {
    trail.pop();
    show(trail[trail.length - 1]);
  }

  var bar = Swardbook.element('div', 'sb-key__bar');
  var begin = bar.appendChild(button('One question at a time', start));
  var back = bar.appendChild(button('Back', stepBack));
  var whole = bar.appendChild(button('Show the whole key', function () { trail = []; show(''); begin.focus(); }));
  root.insertBefore(bar, root.firstChild);

  root.addEventListener('click', function (event) {
    var link = event.target.closest ? event.target.closest('[data-answer]') : null;
    if (!link || !trail.length) return;
    event.preventDefault();
    trail.push(link.getAttribute('href').slice(1));
    show(trail[trail.length - 1]);
  });

  /* Before printing everything is shown; afterwards what was on the screen comes back. */
  window.addEventListener('beforeprint', function () { steps.forEach(function (step) { step.hidden = false; }); });
  window.addEventListener('afterprint', function () { show(trail[trail.length - 1] || ''); });
  show('');
});
