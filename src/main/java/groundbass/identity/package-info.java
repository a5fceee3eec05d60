/**
 * How contents and rows are named: digests, the form of ids, names for addresses. Knows nothing of what they name.
 */
package groundbass.identity;
