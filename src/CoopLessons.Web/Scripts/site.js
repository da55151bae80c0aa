// One file for every page.
import htmx from 'htmx.org';
import './clock.js';
import './page.js';
import './outbox.js';
import './pages.js';
import './keep.js';
import './marks.js';
import './pieces.js';
import './basket.js';
import './shell.js';
import './install.js';
import './quick.js';
import './mend.js';
import './stopwatch.js';
import './notices.js';

window.htmx = htmx;
