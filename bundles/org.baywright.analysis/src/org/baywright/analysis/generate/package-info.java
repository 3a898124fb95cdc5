/** Makes rule bases of any size, shaped like real ones, with known anomalies: for benchmarks and tests. */
package org.baywright.analysis.generate;
