// What stands in an element becomes what a mark-up says; what is alike stays, so that only what differs is laid out and painted anew.

/** Makes what stands in an element what `html` says. */
export function patch(element, html) {
  const wanted = element.cloneNode(false);
  wanted.innerHTML = html;
  merge(element, wanted);
}

function merge(now, wanted) {
  let old = now.firstChild;
  for (let made = wanted.firstChild; made; ) {
    const [next, after] = [made.nextSibling, old?.nextSibling];
    if (!old) now.append(made);
    else if (!old.isEqualNode(made)) {
      if (isSameGroup(old, made)) merge(old, made);
      else old.replaceWith(made);
    }
    [made, old] = [next, after];
  }
  while (old) {
    const after = old.nextSibling;
    old.remove();
    old = after;
  }
}

/** Whether two elements differ in what stands in them only. */
function isSameGroup(old, made) {
  return (
    old.nodeName === made.nodeName &&
    made.firstElementChild &&
    old.attributes.length === made.attributes.length &&
    [...made.attributes].every(({ name, value }) => old.getAttribute(name) === value)
  );
}
