/** Templates, forms and how things are written for one reader. Knows no route and no rule. */
package groundbass.web.view;
