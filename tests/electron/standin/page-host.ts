/**
 * Text of the script that gives a page what Electron gives a preload script: `require('electron')` with the bridge
 * and the renderer's end of ipc. Electron runs preload scripts in the main frame only, and so does this.
 */
export function preloadHost(preload: string): string {
  return `
(() => {
  if (window !== window.top) return;
  const listeners = new Map();
  const ports = new Map();
  window.electronHost = {
    fromMain(channel, message, ids) {
      const given = ids.map((id) => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = ({ data }) => window.electronPortSend(id, data);
        ports.set(id, port1);
        return port2;
      });
      for (const listener of listeners.get(channel) ?? []) listener({ ports: given }, message);
    },
    fromPort(id, data) {
      ports.get(id)?.postMessage(data);
    },
  };
  const electron = {
    contextBridge: {
      exposeInMainWorld(name, value) {
        Object.defineProperty(window, name, { value, enumerable: true });
        window.electronHost.exposed = [...(window.electronHost.exposed ?? []), name];
      },
    },
    ipcRenderer: {
      on: (channel, listener) => listeners.set(channel, [...(listeners.get(channel) ?? []), listener]),
      send: (channel) => window.electronSend(channel),
    },
  };
  const require = (name) => {
    if (name !== 'electron') throw new Error('A sandboxed preload script can require electron only, not ' + name);
    return electron;
  };
  (function (require, module, exports) {
${preload}
  })(require, { exports: {} }, {});
})();`;
}
