#!/usr/bin/env node
// Stands for a Firefox that is too old for its driver: it takes the first commands of WebDriver BiDi and knows no others.
import { createHash } from 'node:crypto'
import { createServer } from 'node:http'

const answers = {
  'session.new': { sessionId: 'fake', capabilities: { browserName: 'firefox', browserVersion: '1.0' } },
  'session.subscribe': { subscription: 'fake' },
  'browser.getUserContexts': { userContexts: [] },
  'browser.close': {},
}

const server = createServer()
server.on('upgrade', (request, socket) => {
  const key = `${request.headers['sec-websocket-key']}258EAFA5-E914-47DA-95CA-C5AB0DC85B11`
  const accept = createHash('sha1').update(key).digest('base64')
  socket.write(
    `HTTP/1.1 101 Switching Protocols\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Accept: ${accept}\r\n\r\n`,
  )
  socket.on('data', (bytes) => {
    for (const text of texts(bytes)) {
      const command = JSON.parse(text)
      socket.write(frame(JSON.stringify(answer(command))))
      if (command.method === 'browser.close') socket.end(() => process.exit())
    }
  })
  socket.on('error', () => {})
  socket.on('close', () => process.exit())
})
server.listen(0, '127.0.0.1', () => {
  const address = server.address()
  const port = typeof address === 'object' ? address?.port : 0
  console.error(`WebDriver BiDi listening on ws://127.0.0.1:${port}`)
})

function answer(/** @type {{ id: number, method: keyof typeof answers }} */ { id, method }) {
  return method in answers
    ? { type: 'success', id, result: answers[method] }
    : { type: 'error', id, error: 'unknown command', message: method }
}

/** Texts of the frames that a client sent (RFC 6455, 5.2: masked, up to 64 KiB, none cut in two). */
function* texts(/** @type {Buffer} */ bytes) {
  for (let at = 0; at + 6 <= bytes.length; ) {
    const short = bytes.readUInt8(at + 1) & 0x7f
    const length = short === 126 ? bytes.readUInt16BE(at + 2) : short
    const mask = at + (short === 126 ? 4 : 2)
    const body = bytes.subarray(mask + 4, mask + 4 + length).map((byte, n) => byte ^ bytes.readUInt8(mask + (n % 4)))
    if ((bytes.readUInt8(at) & 0x0f) === 1) yield Buffer.from(body).toString()
    at = mask + 4 + length
  }
}

function frame(/** @type {string} */ text) {
  const body = Buffer.from(text)
  const head = body.length < 126 ? [0x81, body.length] : [0x81, 126, body.length >> 8, body.length & 0xff]
  return Buffer.concat([Buffer.from(head), body])
}
