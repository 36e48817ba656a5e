/** f, and the arguments of its calls. */
export const recorded = <In, Out>(f: (input: In) => Out) => {
  const asked: In[] = [];
  const call = (input: In): Out => {
    asked.push(input);
    return f(input);
  };
  return { asked, call };
};
