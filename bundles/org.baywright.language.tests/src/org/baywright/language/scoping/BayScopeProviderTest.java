package org.baywright.language.scoping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.baywright.language.bay.Atom;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Choice;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.bay.Reading;
import org.baywright.language.bay.Rule;
import org.baywright.language.bay.Trait;
import org.baywright.language.index.Refs;
import org.baywright.language.testing.Samples;
import org.baywright.language.workspace.RuleProject;
import org.eclipse.emf.common.util.TreeIterator;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.resource.IEObjectDescription;
import org.eclipse.xtext.scoping.IScopeProvider;
import org.junit.jupiter.api.Test;

class BayScopeProviderTest {

	private static <T extends EObject> List<T> all(RuleProject project, String file, Class<T> type) {
		List<T> found = new ArrayList<>();
		project.resource(file).orElseThrow().getAllContents().forEachRemaining(element -> {
			if (type.isInstance(element)) {
				found.add(type.cast(element));
			}
		});
		return found;
	}

	private static Set<String> visible(RuleProject project, EObject context, EReference reference) {
		Set<String> names = new TreeSet<>();
		for (IEObjectDescription description : project.services().getInstance(IScopeProvider.class)
				.getScope(context, reference).getAllElements()) {
			names.add(description.getName().toString());
		}
		return names;
	}

	@Test
	void everyReferenceOfTheSamplesLeadsToWhatItNames() {
		for (Path sample : Samples.all()) {
			RuleProject project = RuleProject.inMemory("sample");
			Samples.texts(sample).forEach(project::update);
			int references = 0;
			for (String file : project.files()) {
				Resource resource = project.resource(file).orElseThrow();
				TreeIterator<EObject> contents = resource.getAllContents();
				while (contents.hasNext()) {
					references += checkReferences(contents.next());
				}
				assertEquals(List.of(), resource.getErrors());
			}
			assertTrue(references > 0);
		}
	}

	private static int checkReferences(EObject element) {
		int checked = 0;
		for (EReference reference : element.eClass().getEAllReferences()) {
			if (reference.isContainment()) {
				continue;
			}
			List<String> names = Refs.names(element, reference);
			Object value = element.eGet(reference);
			Collection<?> targets = value instanceof Collection<?> many ? many : value == null ? List.of() : List.of(value);
			assertEquals(names, targets.stream().map(target -> BayNames.reference((EObject) target)).toList());
			checked += names.size();
		}
		return checked;
	}

	@Test
	void aTraitIsThatOfTheFamilyAtHand() {
		RuleProject project = Samples.tarnInMemory();
		Atom engine = all(project, "power/battery.bay", Atom.class).stream()
				.filter(atom -> atom.getSubject() instanceof Trait).findFirst().orElseThrow();
		assertEquals("tarn", ((org.baywright.language.bay.Family) engine.getSubject().eContainer()).getName());
		Reading lift = all(project, "jobs.bay", Reading.class).stream()
				.filter(reading -> reading.getSubject() instanceof Trait trait && trait.getName().equals("tail_lift"))
				.findFirst().orElseThrow();
		assertEquals(lift.getSubject(), lift.getValue().eContainer());
	}

	@Test
	void valuesAreThoseOfTheirOwner() {
		RuleProject project = Samples.tarnInMemory();
		Rule lamp = all(project, "power/battery.bay", Rule.class).stream().filter(rule -> rule.getName().equals("lamp"))
				.findFirst().orElseThrow();
		assertEquals(Set.of("lit", "dark"), visible(project, lamp, BayPackage.Literals.CHOICE__VALUE));
		Choice electric = all(project, "power/battery.bay", Choice.class).get(0);
		assertEquals(Set.of("diesel_2_0", "diesel_3_0", "electric", "petrol_1_6"),
				visible(project, electric, BayPackage.Literals.CHOICE__VALUE));
	}

	@Test
	void whereSeesTraitsOnlyAndLawsSeeNoFaults() {
		RuleProject project = Samples.tarnInMemory();
		Rule flat = all(project, "power/battery.bay", Rule.class).get(0);
		assertEquals(Set.of("built", "engine", "tail_lift"),
				visible(project, flat.getWhere().get(0), BayPackage.Literals.ATOM__SUBJECT));
		Set<String> given = visible(project, flat.getGiven().get(0), BayPackage.Literals.ATOM__SUBJECT);
		assertTrue(given.contains("battery.discharged") && given.contains("no_crank") && given.contains("engine"));
		EObject law = all(project, "findings.bay", org.baywright.language.bay.Law.class).get(0);
		assertTrue(visible(project, law, BayPackage.Literals.ATOM__SUBJECT).stream().noneMatch(name -> name.contains(".")));
	}

	@Test
	void referencesFollowAnEditOfAnotherFile() {
		RuleProject project = Samples.tarnInMemory();
		Rule before = all(project, "power/battery.bay", Rule.class).get(0);
		assertEquals("rest_voltage", before.getTests().get(0).getName());
		String findings = project.snapshot().sources().get("findings.bay");
		project.update("findings.bay", findings.replace("test rest_voltage \"", "test rest_voltage \"New: "));
		Rule after = all(project, "power/battery.bay", Rule.class).get(0);
		assertNotNull(after.getTests().get(0).eResource());
		assertEquals("New: Battery voltage at rest", after.getTests().get(0).getTitle());
	}

	@Test
	void namesTellWhatBelongsToWhat() {
		RuleProject project = Samples.tarnInMemory();
		BayNames names = project.services().getInstance(BayNames.class);
		assertEquals("battery.discharged", names.getFullyQualifiedName(
				all(project, "power/battery.bay", org.baywright.language.bay.Fault.class).get(0)).toString());
		Trait engine = all(project, "vehicles.bay", Trait.class).get(1);
		assertEquals("tarn.engine", names.getFullyQualifiedName(engine).toString());
		NamedValue diesel = engine.getValues().get(0);
		assertEquals("tarn.engine.diesel_2_0", names.getFullyQualifiedName(diesel).toString());
		assertEquals("diesel_2_0", BayNames.reference(diesel));
	}
}
