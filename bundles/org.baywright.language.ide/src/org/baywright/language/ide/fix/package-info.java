/** Changes that answer a problem or a finding. */
package org.baywright.language.ide.fix;
