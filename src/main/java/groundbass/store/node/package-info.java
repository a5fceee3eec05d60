/** Which servers a site has: one alone, or several that agree. Knows nothing of what they serve. */
package groundbass.store.node;
