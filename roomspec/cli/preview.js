// Keeps the page as the job is: fetches its pieces when told that they changed, and replaces those that differ.
"use strict";

const held = new Map();
let since = null;
let fetching = false;
let again = false;

async function fetched() {
  const answer = await fetch(since === null ? "pieces" : `pieces?since=${since}`);
  if (!answer.ok) throw new Error(`${answer.status}`);
  return answer.json();
}

// What the reader has opened, has focused and looks at stays as it was.
function replaced(section, html) {
  const open = new Set([...section.querySelectorAll("details[open]")].map((one) => one.id));
  const focused = section.contains(document.activeElement) ? document.activeElement.closest("[id]")?.id : null;
  const scrolled = [...section.querySelectorAll(".wide")].map((one) => one.scrollLeft);
  section.innerHTML = html;
  for (const one of section.querySelectorAll("details")) one.open = open.has(one.id);
  section.querySelectorAll(".wide").forEach((one, at) => { one.scrollLeft = scrolled[at] ?? 0; });
  if (document.body.dataset.editor === "yes") {
    for (const one of section.querySelectorAll("button.show")) one.hidden = false;
  }
  const target = focused && document.getElementById(focused);
  if (target) (target.matches("details") ? target.querySelector("summary") : target).focus({ preventScroll: true });
}

// The element nearest the top of the window keeps its place in it while others above change their height.
function steady(change) {
  const seen = [...document.querySelectorAll("main > section, #rooms > section, .face")];
  const anchor = seen.findLast((one) => one.getBoundingClientRect().top <= 0);
  const before = anchor?.getBoundingClientRect().top;
  const name = anchor?.id;
  change();
  const after = name && document.getElementById(name);
  if (after) window.scrollBy(0, after.getBoundingClientRect().top - before);
}

function put(piece, place, before) {
  let section = document.getElementById(piece.name);
  if (!section) {
    section = document.createElement("section");
    section.id = piece.name;
  }
  if (place && section !== before) place.insertBefore(section, before);
  if (held.get(piece.name) !== piece.html) {
    held.set(piece.name, piece.html);
    replaced(section, piece.html);
  }
  section.classList.toggle("old", piece.old);
  return section;
}

function show(page) {
  const state = document.getElementById("state");
  if (state.textContent !== page.state) state.textContent = page.state;
  state.classList.toggle("late", page.late);
  document.title = `${page.title}: preview`;
  document.querySelector("h1").textContent = page.title;
  steady(() => {
    for (const piece of page.pieces) put(piece);
    const rooms = document.getElementById("rooms");
    let next = rooms.firstElementChild;
    for (const piece of page.rooms) next = put(piece, rooms, next).nextElementSibling;
    while (next) {
      const gone = next;
      next = next.nextElementSibling;
      held.delete(gone.id);
      gone.remove();
    }
  });
  if (since === null && page.cost !== null) since = page.cost;
  document.body.dataset.version = page.version;
}

async function follow() {
  again = true;
  if (fetching) return;
  fetching = true;
  try {
    while (again) {
      again = false;
      show(await fetched());
    }
  } catch {
    gone();
  } finally {
    fetching = false;
  }
}

function gone() {
  const state = document.getElementById("state");
  state.textContent = "The preview has ended: what is shown is as it was.";
  state.classList.add("late");
}

document.addEventListener("click", (event) => {
  const button = event.target.closest("button.show");
  if (!button) return;
  const { path, line } = button.dataset;
  fetch("show", { method: "POST", body: JSON.stringify({ path, line: Number(line) }) });
});

const events = new EventSource("events");
events.addEventListener("changed", follow);
events.addEventListener("error", gone);
