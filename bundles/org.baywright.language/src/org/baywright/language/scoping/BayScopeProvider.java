package org.baywright.language.scoping;

public class BayScopeProvider extends AbstractBayScopeProvider {
}
