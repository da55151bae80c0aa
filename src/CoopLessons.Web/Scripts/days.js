// Addresses of days, for pages that are shown without the server.
import { today, weekOf } from './clock.js';

export const dayPath = () => `/today/${today()}`;

/** The kept page's address for what stands in the browser's bar. */
export function keptPath(path) {
  if (path === '/' || path === '/today') return dayPath();
  if (path === '/week/shopping') return `/week/shopping/${weekOf(today())}`;
  return path;
}
