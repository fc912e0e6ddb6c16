import { expect, test } from './support.ts'

test('the server keeps the page out of frames and lets nothing be taken for what it is not', async ({ request }) => {
  for (const path of ['./', './icon.svg', './sw.js']) {
    const response = await request.get(path)
    expect(response.status()).toBe(200)
    const headers = response.headers()
    expect(headers['x-content-type-options']).toBe('nosniff')
    expect(headers['content-security-policy']).toContain("frame-ancestors 'none'")
    expect(headers['cross-origin-opener-policy']).toBe('same-origin')
    expect(headers['cross-origin-embedder-policy']).toBe('require-corp')
  }
})

test('what is not there is 404, and not the page', async ({ request }) => {
  for (const path of ['./assets/gone-0000.js', './gone.css', './gone', './gone/']) {
    const response = await request.get(path)
    expect(response.status(), path).toBe(404)
    expect(await response.text(), path).not.toContain('<div id="root">')
  }
})
