/**
 * A step of the bundler that plants one error in one source while tests run, as FURROW_MUTANT says at that moment; no file is
 * changed. A place that is not there, or there twice, is a bug of the table.
 */
export function plantMutant() {
  return {
    name: 'furrow-plant-mutant',
    enforce: 'pre',
    transform(code, id) {
      const said = process.env.FURROW_MUTANT;
      if (said === undefined) return undefined;
      const { file, find, plant } = JSON.parse(said);
      if (!id.split('?')[0].endsWith(`/${file}`)) return undefined;
      if (code.split(find).length !== 2) throw new Error(`${file} does not hold ${find} once`);
      return code.replace(find, () => plant);
    },
  };
}
