// The processes of a session: the workbench's server with folders of its own, and a browser.
import { execFileSync, spawn } from 'node:child_process';
import fs from 'node:fs';
import { createRequire } from 'node:module';
import net from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { LONG, until } from './patience.mjs';
import { STORYROD } from './spec.mjs';

/** Nothing that talks to the world or asks questions; what an editor shows is as it comes. */
const QUIET = {
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.enableExperiments': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'security.workspace.trust.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'chat.commandCenter.enabled': false,
  'files.autoSave': 'off',
  // Off unless a person wants it.
  'editor.formatOnType': true,
  'git.enabled': false,
};

const CHROMIUM = ['chromium', 'chromium-browser', 'google-chrome'];
const FLAGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
  '--disable-component-update', '--disable-sync'];

export class Machine {
  constructor() {
    this.home = fs.mkdtempSync(path.join(os.tmpdir(), 'workbench-'));
    this.folder = this.make('house');
    // The first folder on the path, where a session can put the server.
    this.programs = this.make('programs');
    this.path = `${this.programs}:/usr/bin:/bin`;
    // The workbench asks the person's shell for the path.
    fs.writeFileSync(path.join(this.home, '.profile'), `export PATH=${this.path}\n`);
    fs.writeFileSync(path.join(this.make('data/User'), 'settings.json'), JSON.stringify(QUIET));
  }

  make(name) {
    const folder = path.join(this.home, name);
    fs.mkdirSync(folder, { recursive: true });
    return folder;
  }

  /** Puts the language server where the path leads. */
  putServer() {
    fs.symlinkSync(STORYROD, path.join(this.programs, 'storyrod'));
  }

  /** Starts the workbench of the folder that `install` filled, with an extension in it, and gives the browser's page. */
  async start(tools, vsix) {
    const codeServer = path.join(tools, 'node_modules/code-server');
    const { chromium } = createRequire(path.join(tools, 'package.json'))('playwright-core');
    const port = await freePort();
    const env = { HOME: this.home, XDG_CONFIG_HOME: this.home, LANG: 'C.UTF-8', SHELL: '/bin/bash', PATH: this.path };
    const common = [codeServer, '--user-data-dir', this.make('data'), '--extensions-dir', this.make('extensions'),
      '--config', path.join(this.home, 'none.yaml')];
    execFileSync(process.execPath, [...common, '--install-extension', vsix], { env, stdio: ['ignore', 'ignore', 'inherit'] });
    this.log = fs.openSync(path.join(this.home, 'code-server.log'), 'w');
    this.server = spawn(process.execPath, [...common, '--auth', 'none', '--bind-addr', `127.0.0.1:${port}`,
      '--disable-telemetry', '--disable-update-check', '--disable-workspace-trust', '--disable-getting-started-override'],
    { env, stdio: ['ignore', this.log, this.log] });
    const address = `http://127.0.0.1:${port}`;
    await until('the workbench answers', async () => (await fetch(`${address}/healthz`)).ok, 120_000);
    const executablePath = CHROMIUM.map((name) => `/usr/bin/${name}`).find((file) => fs.existsSync(file));
    this.browser = await chromium.launch({ executablePath, headless: true, args: FLAGS, env: { ...process.env, HOME: this.home } });
    const context = await this.browser.newContext({ viewport: { width: 1680, height: 1000 } });
    const page = await context.newPage();
    page.setDefaultTimeout(LONG);
    await page.goto(`${address}/?folder=${encodeURIComponent(this.folder)}`);
    await page.waitForSelector('.monaco-workbench .part.statusbar');
    return page;
  }

  /** The language servers that run now, and the kilobytes that each has taken at the most. */
  languageServers() {
    return this.ours().flatMap((pid) => {
      try {
        const command = fs.readFileSync(`/proc/${pid}/cmdline`, 'utf8').split('\0');
        if (path.basename(command[0]) !== 'storyrod' || command[1] !== 'server') return [];
        return [{ pid, peak: Number(/VmHWM:\s+(\d+)/.exec(fs.readFileSync(`/proc/${pid}/status`, 'utf8'))[1]) }];
      } catch {
        return []; // It has just ended.
      }
    });
  }

  /** Our workbench's process and everything that it started. */
  ours() {
    const parents = new Map();
    for (const pid of fs.readdirSync('/proc').filter((name) => /^\d+$/.test(name)).map(Number)) {
      try {
        const status = fs.readFileSync(`/proc/${pid}/stat`, 'utf8');
        parents.set(pid, Number(status.slice(status.lastIndexOf(')') + 2).split(' ')[1]));
      } catch {
        // It has just ended.
      }
    }
    const tree = this.server ? [this.server.pid] : [];
    for (const one of tree) for (const [pid, parent] of parents) if (parent === one) tree.push(pid);
    return tree;
  }

  /** Ends everything, keeps what it logged, and leaves nothing else. */
  async stop(logs) {
    await this.browser?.close().catch(() => {});
    const tree = this.ours().reverse();
    const send = (signal) => tree.forEach((pid) => {
      try {
        process.kill(pid, signal);
      } catch {
        // It has ended already.
      }
    });
    send('SIGTERM');
    const lives = () => tree.some((pid) => fs.existsSync(`/proc/${pid}/exe`));
    await until('it ends', () => !lives(), 5_000).catch(() => send('SIGKILL'));
    fs.rmSync(logs, { recursive: true, force: true });
    fs.cpSync(path.join(this.home, 'data/logs'), logs, { recursive: true });
    fs.rmSync(this.home, { recursive: true, force: true, maxRetries: 5 });
  }
}

function freePort() {
  return new Promise((resolve, reject) => {
    const probe = net.createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}
