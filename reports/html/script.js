"use strict";
// The page is whole without this: it only filters findings, opens the working
// that a link leads to, and opens that of findings for printing.
(() => {
  const form = document.querySelector(".filter");
  if (form) {
    const field = form.querySelector("input");
    const told = form.querySelector("output");
    const groups = [...document.querySelectorAll("#findings .group")];
    const filter = () => {
      const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
      const has = (text) => words.every((word) => text.includes(word));
      let shown = 0;
      let all = 0;
      for (const group of groups) {
        const shared = [...group.children].filter((part) => !part.matches(".finding")).map((part) => part.textContent).join(" ");
        let any = false;
        for (const finding of group.querySelectorAll(".finding")) {
          const keep = has((shared + " " + finding.textContent).toLowerCase());
          finding.hidden = !keep;
          any = any || keep;
          all++;
          if (keep) shown++;
        }
        group.hidden = !any;
      }
      told.textContent = words.length ? `${shown} of ${all} findings` : "";
    };
    form.hidden = false;
    form.addEventListener("submit", (event) => { event.preventDefault(); filter(); });
    field.addEventListener("input", filter);
  }
  const reveal = () => {
    const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!target) return;
    for (let part = target; part; part = part.parentElement) {
      if (part.matches("details")) part.open = true;
      if (part.hidden) part.hidden = false;
    }
    target.scrollIntoView();
  };
  addEventListener("hashchange", reveal);
  reveal();
  let closed = [];
  addEventListener("beforeprint", () => {
    closed = [...document.querySelectorAll(".finding details:not([open])")];
    for (const part of closed) part.open = true;
  });
  addEventListener("afterprint", () => {
    for (const part of closed) part.open = false;
  });
})();
