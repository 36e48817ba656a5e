import { describe, expect, it } from 'vitest';
import { pageFlow } from '../../../../src/documents/page/page-flow.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';

const page = { left: 10, top: 10, right: 110, bottom: 210 };
const block = (width: number, height: number) => ({ least: width, most: width, height, gap: 5 });

describe('pageFlow', () => {
  it('sets blocks beside one another while they fit, then below all of them', () => {
    const flow = pageFlow(page, page);
    expect(flow.place(block(40, 50))).toEqual({ page: 0, left: 10, top: 10, width: 40 });
    expect(flow.place(block(40, 80))).toEqual({ page: 0, left: 55, top: 10, width: 40 });
    expect(flow.place(block(40, 20))).toEqual({ page: 0, left: 10, top: 95, width: 40 });
  });

  it('fills the room under a block that stands beside a taller one', () => {
    const flow = pageFlow(page, page);
    flow.place(block(40, 100));
    flow.place(block(30, 40));
    expect(flow.place(block(50, 40))).toEqual({ page: 0, left: 55, top: 55, width: 50 });
    expect(flow.place(block(50, 40))).toMatchObject({ left: 10, top: 115 });
  });

  it('makes a block as wide as there is room for, between its limits', () => {
    const flow = pageFlow(page, page);
    flow.place(block(40, 50));
    expect(flow.place({ least: 30, most: 90, height: 50, gap: 5 })).toMatchObject({ left: 55, width: 55 });
    expect(flow.place({ least: 30, most: 90, height: 50, gap: 5 })).toMatchObject({ left: 10, width: 90 });
  });

  it('goes to a new page when the block has no room on this one', () => {
    const flow = pageFlow({ ...page, top: 60 }, page);
    flow.place(block(100, 100));
    expect(flow.heightLeft(100, 5)).toBe(45);
    expect(flow.place(block(100, 60))).toMatchObject({ page: 1, top: 10 });
    expect(flow.pageCount()).toBe(2);
  });

  it('offers the room beside the last block as well as below it', () => {
    const flow = pageFlow(page, page);
    flow.place(block(40, 150));
    expect(flow.heightLeft(40, 5)).toBe(200);
    expect(flow.heightLeft(80, 5)).toBe(45);
  });

  it.each([
    [101, 10],
    [10, 201],
  ])('refuses a block of %d by %d mm, larger than any page', (width, height) =>
    expect(() => pageFlow(page, page).place(block(width, height))).toThrow(DomainError),
  );
});
