import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';

/** A tag as a printer of 288 dots an inch puts it on a label. */
export async function printed(browser: Browser, address: string): Promise<Buffer> {
  const context = await browser.newContext({ deviceScaleFactor: 3 });
  const tagPage = await context.newPage();
  await tagPage.goto(address);
  const picture = await tagPage.locator('.tag').screenshot();
  await context.close();
  return picture;
}

/** What the rule engine has against a page. It is put in past the page's own policy, which would not let it in. */
export async function violations(of: Page): Promise<readonly string[]> {
  await of.evaluate(axe.source);
  return of.evaluate(async () => {
    const { violations: found } = await (window as unknown as { axe: typeof axe }).axe.run();
    return found.map(each => `${each.id} ${each.nodes.map(node => node.html).join(' ')}`);
  });
}
