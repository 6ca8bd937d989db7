/* Puts a text with quantities into an element. Twin: words. text: a string, or a list of strings and of
   [metric, us] pairs. What stood there goes. */
Swardbook.words = function (element, text) {
  element.textContent = '';
  (typeof text === 'string' ? [text] : text).forEach(function (part) {
    if (typeof part === 'string') return element.appendChild(document.createTextNode(part));
    var quantity = element.appendChild(Swardbook.element('span', 'sb-quantity'));
    quantity.appendChild(Swardbook.element('span', 'sb-quantity__metric', part[0]));
    if (!part[1] || part[1] === part[0]) return quantity;
    quantity.appendChild(Swardbook.element('wbr'));
    var us = quantity.appendChild(Swardbook.element('span', 'sb-quantity__us'));
    us.appendChild(Swardbook.element('span', 'sb-quantity__bracket', ' ('));
    us.appendChild(document.createTextNode(part[1]));
    us.appendChild(Swardbook.element('span', 'sb-quantity__bracket', ')'));
    return quantity;
  });
  return element;
};

/* The same reason with every number that decided, one tap away. of: whose reason it is. */
Swardbook.exactly = function (text, of) {
  var made = Swardbook.element('details', 'sb-exactly'), summary = made.appendChild(Swardbook.element('summary', '', 'Exactly'));
  made.setAttribute('data-search-exclude', '');
  made.setAttribute('data-print-hidden', '');
  summary.appendChild(Swardbook.element('span', 'sb-hidden', ': ' + of));
  Swardbook.words(made.appendChild(Swardbook.element('p')), text);
  return made;
};
