// Builds elements. Text is always text: nothing that came over the network becomes markup.

/**
 * h("button", {class: "stop", onclick: f, "aria-pressed": "true"}, "text", child)
 * @param {string} tag
 * @param {Record<string, any>} [attributes] functions become listeners; null and false leave an attribute out
 * @param {...any} children elements, strings, lists of them, or null
 * @returns {any}
 */
export function h(tag, attributes = {}, ...children) {
  return dress(document.createElement(tag), attributes, children);
}

/** The same for SVG. @param {string} tag @param {Record<string, any>} [attributes] @param {...any} children @returns {any} */
export function s(tag, attributes = {}, ...children) {
  return dress(document.createElementNS("http://www.w3.org/2000/svg", tag), attributes, children);
}

/** Puts these children in the place of those that were there. @param {Element} parent @param {...any} children */
export function fill(parent, ...children) {
  parent.replaceChildren(...children.flat(3).filter((child) => child !== null && child !== undefined && child !== false));
  return parent;
}

/** Sets an attribute only where it changes, so that screen readers are not told twice. */
export function mark(element, name, value) {
  const text = value === true ? "" : value;
  if (value === null || value === false) element.removeAttribute(name);
  else if (element.getAttribute(name) !== String(text)) element.setAttribute(name, text);
}

/** Sets a text only where it changes. @param {Element} element @param {string} text */
export function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

function dress(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (value !== null && value !== false && value !== undefined) element.setAttribute(name, value === true ? "" : value);
  }
  return fill(element, children);
}
