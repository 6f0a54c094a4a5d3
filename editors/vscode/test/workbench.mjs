// The workbench as a person sees and uses it.
import { plain, see, until } from './patience.mjs';

const EDITOR = '.editor-instance';
const PALETTE = '.quick-input-widget';
const ROWS = `${PALETTE} .quick-input-list .monaco-list-row`;

export class Workbench {
  constructor(page) {
    this.page = page;
    this.keys = page.keyboard;
  }

  press(...keys) {
    return keys.reduce((before, key) => before.then(() => this.keys.press(key)), Promise.resolve());
  }

  /** What the elements that a person can see say, one text each. */
  async texts(selector) {
    const texts = await this.page.locator(selector).filter({ visible: true }).allInnerTexts();
    return texts.map((text) => plain(text).trim()).filter(Boolean);
  }

  /** What a screen reader would say of the rows of a list that are in sight. */
  async labels(selector) {
    return this.page.locator(selector).filter({ visible: true }).evaluateAll(
      (rows) => rows.map((row) => row.getAttribute('aria-label') ?? ''));
  }

  // The box on top ------------------------------------------------------------------------------------

  /** Types into the box on top and chooses the row that begins so. */
  async choose(typed, row = typed) {
    await this.page.waitForSelector(`${PALETTE} input`);
    await this.keys.insertText(typed);
    const wanted = this.page.locator(ROWS).filter({ hasText: row }).first();
    await wanted.waitFor().catch(async () => see(() => this.texts(ROWS), row));
    await wanted.click();
  }

  /** Chooses a command from the palette. */
  async command(title) {
    await this.press('Escape', 'F1');
    await this.choose(title);
  }

  /** Finds a file of the folder; what it gives opens it. */
  async find(name) {
    await this.press('Escape', 'Control+1', 'Control+p');
    await this.page.waitForSelector(`${PALETTE} input`);
    await this.keys.insertText(name);
    await until(`${name} is found`, async () => (await this.texts(`${ROWS}.focused`)).some((row) => row.includes(name)));
    return () => this.press('Enter');
  }

  /** Opens a file of the folder, on the left. */
  async open(name) {
    await this.press('Escape', 'Control+1', 'Control+p');
    await this.choose(name);
    await this.page.waitForSelector(`.editor-group-container.active .tab.active[data-resource-name="${name.split('/').pop()}"]`);
    await this.page.waitForSelector(`${EDITOR} .view-line`);
  }

  /** Types a setting of this machine where settings are searched. */
  async set(name, value) {
    await this.setting('Preferences: Open Remote Settings', name);
    const box = this.page.locator(`.settings-editor [data-key="${name}"] input`);
    await box.fill(value);
    await box.press('Enter');
    await this.closeTab();
  }

  /** Switches a setting of the person on or off. */
  async toggle(name) {
    await this.setting('Preferences: Open User Settings', name);
    await this.page.locator(`.settings-editor [data-key="${name}"] .setting-value-checkbox`).click();
    await this.closeTab();
  }

  async setting(page, name) {
    await this.command(page);
    await this.page.locator('.settings-editor .suggest-input-container').click();
    await this.press('Control+a');
    await this.keys.insertText(`@id:${name}`);
    await this.page.locator(`.settings-editor [data-key="${name}"]`).waitFor();
  }

  // A file --------------------------------------------------------------------------------------------

  /** Puts the cursor at a place of the active editor. */
  async put({ line, column }) {
    await this.press('Escape', 'Control+g');
    await this.page.waitForSelector(`${PALETTE} input`);
    await this.keys.insertText(`${line}:${column}`);
    await see(() => this.texts(ROWS), `line ${line}`);
    await this.press('Enter');
    await see(() => this.texts('[id="status.editor.selection"]'), `Ln ${line}, Col ${column}`);
  }

  async select(place, text) {
    await this.put(place);
    for (let n = 0; n < text.length; n += 1) await this.press('Shift+ArrowRight');
    if (text) await see(() => this.texts('[id="status.editor.selection"]'), `(${text.length} selected)`);
  }

  /** Selects `old` at a place and types something else. */
  async replace(place, old, typed) {
    await this.select(place, old);
    if (old && !typed) await this.press('Delete');
    if (typed) await this.keys.insertText(typed);
    await this.press('Escape');
  }

  async save() {
    await this.press('Control+s');
    await until('the file is saved', async () => (await this.page.locator('.tab.active.dirty').count()) === 0);
  }

  /** Brings back what is on disk. */
  async revert() {
    await this.press('Escape');
    await this.command('File: Revert File');
    await until('the file is as it was', async () => (await this.page.locator('.tab.active.dirty').count()) === 0);
  }

  /** The colour in which a word that stands alone in its piece of a line is drawn. */
  async colour(word) {
    const piece = this.page.locator(`${EDITOR} .view-line span > span`, { hasText: new RegExp(`^\\s*${word}\\s*$`) }).first();
    return piece.evaluate((span) => getComputedStyle(span).color);
  }

  /** Closes the active tab with all that was changed in it. */
  async closeTab() {
    await this.command('View: Revert and Close Editor');
  }

  async closeAll() {
    await this.command('View: Close All Editors');
    await until('nothing is open', async () => (await this.page.locator('.tab').count()) === 0);
  }

  /** The lines that are in sight in an editor, counted from the left, with what an extension put into them. */
  async lines(nth = 0) {
    const lines = await this.page.locator(EDITOR).nth(nth).locator('.view-line').evaluateAll((found) => {
      const top = (line) => Number.parseFloat(line.style.top);
      return found.sort((one, other) => top(one) - top(other)).map((line) => line.innerText);
    });
    return lines.map(plain);
  }

  /** The titles of all tabs. */
  tabs() {
    return this.texts('.tab .label-name');
  }

  tab() {
    return this.texts('.editor-group-container.active .tab.active .label-name');
  }

  squiggles(kind = 'error') {
    return this.page.locator(`${EDITOR} .squiggly-${kind}`).count();
  }

  /** Waits until something is underlined. */
  squiggle() {
    return this.page.waitForSelector(`${EDITOR} .squiggly-error`, { state: 'attached' });
  }

  lenses() {
    return this.texts(`${EDITOR} .codelens-decoration a`);
  }

  /** Where the cursor is drawn, in the middle of its height. */
  async cursor() {
    const cursor = this.page.locator(`${EDITOR} .cursors-layer .cursor`).first();
    const box = await cursor.boundingBox();
    return { x: box.x + 2, y: box.y + box.height / 2 };
  }

  /** Lets the mouse rest on a place, and tells what is shown there. */
  async hover(place) {
    await this.put(place);
    await until('something is shown under the mouse', async () => {
      const { x, y } = await this.cursor();
      await this.page.mouse.move(x + 200, y + 100);
      await this.page.mouse.move(x, y, { steps: 4 });
      return this.page.waitForSelector('.monaco-hover:not(.hidden) .hover-contents', { timeout: 3_000 });
    });
    return () => this.texts('.monaco-hover:not(.hidden)');
  }

  // Parts round the editor ----------------------------------------------------------------------------

  /** Shows the Problems panel. */
  async showProblems() {
    if (await this.page.locator('.markers-panel').isVisible()) return;
    await this.press('Control+Shift+m');
    await this.page.locator('.markers-panel').waitFor();
  }

  /** The rows of the Problems panel, each finding with what belongs to it. */
  async problems() {
    return (await this.texts('.markers-panel .monaco-list-row')).map((row) => row.replace(/\s+/g, ' '));
  }

  /** How many errors and warnings there are in the whole folder, as the status bar counts them. */
  async counts() {
    const said = (await this.texts('[id="status.problems"]')).join(' ');
    return said.match(/\d+/g)?.slice(0, 2).map(Number);
  }

  messages() {
    return this.texts('.notifications-toasts .notification-list-item');
  }

  /** The rows of the tree in the side bar. */
  async sideBar() {
    return (await this.texts('.part.sidebar .monaco-list-row')).map((row) => row.replace(/\s+/g, ' '));
  }

  suggestions() {
    return this.labels('.suggest-widget.visible .monaco-list-row');
  }
}
