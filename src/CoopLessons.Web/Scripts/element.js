// Makes an element with what it is given and what stands in it; texts among the children stay texts.
export const element = (name, given = {}, ...children) => {
  const made = Object.assign(document.createElement(name), given);
  made.append(...children);
  return made;
};
