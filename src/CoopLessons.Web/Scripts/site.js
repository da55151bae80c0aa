// One file for every page.
import htmx from 'htmx.org';
import './page.js';
import './basket.js';

window.htmx = htmx;
