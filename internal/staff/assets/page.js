// Brings news by itself, and counts what a text will take. The page works without it.
(function () {
  "use strict";
  var area = document.querySelector("textarea[data-count]");
  if (area) {
    var out = document.getElementById(area.dataset.count);
    var plain = /^[\n\r -~¡£¤¥§¿ÄÅÆÇÉÑÖØÜßàäåæèéìñòöøùü]*$/;
    area.addEventListener("input", function () {
      var n = area.value.length, gsm = plain.test(area.value);
      var one = gsm ? 160 : 70, more = gsm ? 153 : 67;
      var parts = n === 0 ? 0 : n <= one ? 1 : Math.ceil(n / more);
      out.textContent = n === 0 ? "" : n + " characters, about " + parts + (parts === 1 ? " segment" : " segments") + " as a text";
    });
  }

  var live = document.getElementById("live");
  if (!live || !document.body.hasAttribute("data-live")) return;
  var busy = false, again = false;

  function changed() {
    if (busy) { again = true; return; }
    // Nothing moves under somebody's hands.
    if (live.contains(document.activeElement) && /^(INPUT|TEXTAREA|SELECT)$/.test(document.activeElement.tagName)) return;
    busy = true;
    fetch(location.href, { headers: { "X-News": "1" }, credentials: "same-origin" })
      .then(function (r) { if (!r.ok || r.redirected) throw new Error(String(r.status)); return r.text(); })
      .then(function (html) {
        var page = new DOMParser().parseFromString(html, "text/html");
        var fresh = page.getElementById("live");
        if (!fresh || fresh.innerHTML === live.innerHTML) return;
        var held = document.activeElement && live.contains(document.activeElement) ? document.activeElement.getAttribute("href") : null;
        var open = Array.prototype.map.call(live.querySelectorAll("details"), function (d) { return d.open; });
        live.replaceWith(document.adoptNode(fresh));
        live = fresh;
        live.querySelectorAll("details").forEach(function (d, i) { d.open = !!open[i]; });
        if (held) { var link = live.querySelector('a[href="' + CSS.escape(held) + '"]'); if (link) link.focus(); }
      })
      .catch(function () { })
      .finally(function () { busy = false; if (again) { again = false; changed(); } });
  }

  var news = new EventSource("/staff/news");
  news.addEventListener("changed", changed);
  setInterval(changed, 60000); // waits grow longer even where nothing happens
  addEventListener("pagehide", function () { news.close(); });
})();
