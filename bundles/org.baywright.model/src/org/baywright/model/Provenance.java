package org.baywright.model;

import java.time.LocalDate;
import java.util.Optional;

/** Who wrote a rule, when, from what source and why. */
public record Provenance(Optional<String> author, Optional<LocalDate> date, Source source, Optional<String> because) {
}
