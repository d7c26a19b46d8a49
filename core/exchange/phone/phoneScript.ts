/**
 * All that runs in the phone page: it filters the cards by what is typed, and makes the map larger. The page's policy
 * names its hash, so that nothing else can run there; a test compares the two.
 */
export const phoneScript = `
(function () {
  var field = document.getElementById('search');
  var entries = Array.prototype.slice.call(document.querySelectorAll('[data-words]'));
  var none = document.getElementById('none');
  function plain(text) {
    return text.toLowerCase().normalize('NFD').replace(/[\\u0300-\\u036f]/g, '');
  }
  function search() {
    var words = plain(field.value).split(/\\s+/).filter(Boolean);
    var shown = 0;
    entries.forEach(function (entry) {
      var has = words.every(function (word) { return plain(entry.getAttribute('data-words')).indexOf(word) >= 0; });
      entry.hidden = !has;
      if (has) shown += 1;
    });
    none.hidden = shown > 0;
  }
  field.addEventListener('input', search);
  var map = document.getElementById('map');
  var width = 100;
  document.getElementById('larger').addEventListener('click', function () { size(width * 1.5); });
  document.getElementById('smaller').addEventListener('click', function () { size(width / 1.5); });
  function size(next) {
    width = Math.min(1200, Math.max(100, next));
    map.firstElementChild.style.width = width + '%';
  }
})();
`;

/** SHA-256 of the script, as a content security policy names it. */
export const phoneScriptHash = 'sha256-5yWXRNeY/KOgFLKTOGebIhG3lc4FlC9fwm1InKpiNTk=';
